-- AlterTable
ALTER TABLE "alarm_call" ADD COLUMN     "call_out_id" UUID;

-- CreateTable
CREATE TABLE "call_out" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "account_id" UUID NOT NULL,
    "named_id" UUID,
    "occurrence_id" UUID,
    "place" TEXT NOT NULL,
    "begun_at" TIMESTAMPTZ(3) NOT NULL,
    "until_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "call_out_pkey" PRIMARY KEY ("site_id","id")
);

-- CreateTable
CREATE TABLE "call_out_event" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "call_out_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "again" INTEGER NOT NULL,
    "step" INTEGER NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "by" TEXT,
    "until_at" TIMESTAMPTZ(3),
    "note" TEXT,

    CONSTRAINT "call_out_event_pkey" PRIMARY KEY ("site_id","id")
);

-- CreateIndex
CREATE UNIQUE INDEX "alarm_call_out_once" ON "alarm_call"("site_id", "call_out_id", "again", "step", "account_id", "channel");

-- CreateIndex
CREATE INDEX "call_out_site_id_begun_at_idx" ON "call_out"("site_id", "begun_at");

-- CreateIndex
CREATE UNIQUE INDEX "call_out_event_once" ON "call_out_event"("site_id", "call_out_id", "kind", "again", "step");

-- AddForeignKey
ALTER TABLE "alarm_call" ADD CONSTRAINT "alarm_call_site_id_call_out_id_fkey" FOREIGN KEY ("site_id", "call_out_id") REFERENCES "call_out"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "call_out" ADD CONSTRAINT "call_out_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "call_out" ADD CONSTRAINT "call_out_site_id_occurrence_id_fkey" FOREIGN KEY ("site_id", "occurrence_id") REFERENCES "alarm_occurrence"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "call_out_event" ADD CONSTRAINT "call_out_event_site_id_call_out_id_fkey" FOREIGN KEY ("site_id", "call_out_id") REFERENCES "call_out"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- What Prisma has no word for.
ALTER TABLE "alarm_call" DROP CONSTRAINT "alarm_call_of_one";
ALTER TABLE "alarm_call"
  ADD CONSTRAINT "alarm_call_of_one" CHECK (num_nonnulls("occurrence_id", "test_id", "call_out_id") = 1);
ALTER TABLE "call_out_event"
  ADD CONSTRAINT "call_out_event_kind_known" CHECK ("kind" IN ('extended', 'overdue', 'seen-to', 'back')),
  ADD CONSTRAINT "call_out_event_until" CHECK (("until_at" IS NOT NULL) = ("kind" = 'extended')),
  -- Nobody but a person says that somebody is back, or takes more time.
  ADD CONSTRAINT "call_out_event_by_person" CHECK (("by" IS NULL) = ("kind" = 'overdue'));

CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "call_out" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "never_emptied" BEFORE TRUNCATE ON "call_out" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "call_out_event" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "never_emptied" BEFORE TRUNCATE ON "call_out_event" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
