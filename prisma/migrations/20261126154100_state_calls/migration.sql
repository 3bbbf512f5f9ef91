-- Who was told that a state has outstayed its end.
CREATE TABLE "state_call" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "system_id" UUID NOT NULL,
    "run_id" UUID NOT NULL,
    "until" TIMESTAMPTZ(3) NOT NULL,
    "turn" INTEGER NOT NULL,
    "account_id" TEXT NOT NULL,
    "channel" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "result" TEXT NOT NULL,
    "detail" TEXT,

    CONSTRAINT "state_call_pkey" PRIMARY KEY ("site_id","id")
);

CREATE INDEX "state_call_site_id_run_id_until_idx" ON "state_call"("site_id", "run_id", "until");

ALTER TABLE "state_call" ADD CONSTRAINT "state_call_site_id_system_id_fkey" FOREIGN KEY ("site_id", "system_id") REFERENCES "system"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- What Prisma has no word for.
ALTER TABLE "state_call"
  ADD CONSTRAINT "state_call_channel_known" CHECK ("channel" IN ('mail', 'push', 'webhook')),
  ADD CONSTRAINT "state_call_result_known" CHECK ("result" IN ('taken', 'failed', 'no-way'));
CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "state_call" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "never_emptied" BEFORE TRUNCATE ON "state_call" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
