-- CreateTable
CREATE TABLE "key_handed" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "key" TEXT NOT NULL,
    "holder_id" UUID,
    "place" TEXT,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "by" TEXT NOT NULL,

    CONSTRAINT "key_handed_pkey" PRIMARY KEY ("site_id","id")
);

-- CreateIndex
CREATE INDEX "key_handed_site_id_key_at_idx" ON "key_handed"("site_id", "key", "at");

-- AddForeignKey
ALTER TABLE "key_handed" ADD CONSTRAINT "key_handed_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- What Prisma has no word for: somebody has it, or it lies somewhere.
ALTER TABLE "key_handed" ADD CONSTRAINT "key_handed_somewhere" CHECK (num_nonnulls("holder_id", "place") = 1);

CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "key_handed" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "never_emptied" BEFORE TRUNCATE ON "key_handed" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
