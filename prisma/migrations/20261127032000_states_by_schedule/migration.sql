-- States begin by the clock on a schedule as sheets are due; rows of before have their days of the week and their time instead.
ALTER TABLE "state_timed" ADD COLUMN "schedule" JSONB;
ALTER TABLE "state_timed" ADD CONSTRAINT "state_timed_when" CHECK ("schedule" IS NOT NULL OR cardinality("days") > 0);
