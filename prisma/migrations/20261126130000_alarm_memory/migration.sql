-- What an alarm has to remember of earlier readings: a running mean, starts within the hour, since when nothing moved.
ALTER TABLE "alarm_watch" ADD COLUMN "memory" JSONB;
