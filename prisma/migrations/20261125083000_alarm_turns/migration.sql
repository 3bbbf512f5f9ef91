-- The revision of the site that its alarms were last judged by: another one says that definitions may have changed.
ALTER TABLE "alarm_turn" ADD COLUMN "revision" INTEGER NOT NULL DEFAULT 0;
