-- CreateTable
CREATE TABLE "record_check" (
    "site_id" UUID NOT NULL,
    "checked_at" TIMESTAMPTZ(3) NOT NULL,
    "links" INTEGER NOT NULL,
    "broken_seq" INTEGER,
    "wrong" TEXT,

    CONSTRAINT "record_check_pkey" PRIMARY KEY ("site_id")
);

-- CreateTable
CREATE TABLE "record_anchor" (
    "site_id" UUID NOT NULL,
    "day" DATE NOT NULL,
    "seq" INTEGER NOT NULL,
    "seal" BYTEA NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "record_anchor_pkey" PRIMARY KEY ("site_id","day")
);

-- CreateTable
CREATE TABLE "anchor_sent" (
    "site_id" UUID NOT NULL,
    "day" DATE NOT NULL,
    "place" TEXT NOT NULL,
    "target" TEXT NOT NULL,
    "sent_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "anchor_sent_pkey" PRIMARY KEY ("site_id","day","place")
);

-- AddForeignKey
ALTER TABLE "record_check" ADD CONSTRAINT "record_check_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "record_anchor" ADD CONSTRAINT "record_anchor_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "anchor_sent" ADD CONSTRAINT "anchor_sent_site_id_day_fkey" FOREIGN KEY ("site_id", "day") REFERENCES "record_anchor"("site_id", "day") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- From here on what Prisma has no word for.

ALTER TABLE "record_check"
  ADD CONSTRAINT "record_check_whole" CHECK (("broken_seq" IS NULL) = ("wrong" IS NULL));
ALTER TABLE "record_anchor"
  ADD CONSTRAINT "record_anchor_sealed" CHECK ("seq" >= 1 AND octet_length("seal") = 32);
ALTER TABLE "anchor_sent"
  ADD CONSTRAINT "anchor_sent_place_known" CHECK ("place" IN ('file', 'mail', 'webhook'));

CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "record_anchor" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "never_emptied" BEFORE TRUNCATE ON "record_anchor" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "anchor_sent" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "never_emptied" BEFORE TRUNCATE ON "anchor_sent" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
