-- AlterTable: an entry that was made out of reach keeps its line as it was, where the sheet has become another, and how far the
-- clock of the telephone was off.
ALTER TABLE "round_entry" ADD COLUMN     "clock_off_s" INTEGER,
ADD COLUMN     "line" JSONB;

-- CreateTable
CREATE TABLE "round_photo" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "entry_id" UUID NOT NULL,
    "taken_at" TIMESTAMPTZ(3) NOT NULL,
    "recorded_at" TIMESTAMPTZ(3) NOT NULL,
    "by" TEXT NOT NULL,
    "width" INTEGER NOT NULL,
    "height" INTEGER NOT NULL,
    "bytes" BYTEA NOT NULL,

    CONSTRAINT "round_photo_pkey" PRIMARY KEY ("site_id","id")
);

-- CreateIndex
CREATE INDEX "round_photo_site_id_entry_id_idx" ON "round_photo"("site_id", "entry_id");

-- AddForeignKey
ALTER TABLE "round_photo" ADD CONSTRAINT "round_photo_site_id_entry_id_fkey" FOREIGN KEY ("site_id", "entry_id") REFERENCES "round_entry"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "round_photo" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "never_emptied" BEFORE TRUNCATE ON "round_photo" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
