-- Which states a system is in, without looking through every state it ever was in.
ALTER TABLE "state_event" ADD COLUMN "ends_itself" BOOLEAN NOT NULL DEFAULT false;

CREATE TABLE "state_open" (
    "site_id" UUID NOT NULL,
    "system_id" UUID NOT NULL,
    "state" TEXT NOT NULL,
    "run_id" UUID NOT NULL,
    "begun_at" TIMESTAMPTZ(3) NOT NULL,
    "until" TIMESTAMPTZ(3) NOT NULL,
    "ends_itself" BOOLEAN NOT NULL,

    CONSTRAINT "state_open_pkey" PRIMARY KEY ("site_id","system_id","state")
);

CREATE UNIQUE INDEX "state_open_site_id_run_id_key" ON "state_open"("site_id", "run_id");
CREATE INDEX "state_event_site_id_run_id_at_idx" ON "state_event"("site_id", "run_id", "at");

ALTER TABLE "state_open" ADD CONSTRAINT "state_open_site_id_system_id_fkey" FOREIGN KEY ("site_id", "system_id") REFERENCES "system"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;
