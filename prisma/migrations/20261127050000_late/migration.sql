-- How many of the readings of an hour or a day came late. What is rolled up by now is left as it is: nobody counted.
ALTER TABLE "reading_roll_up" ADD COLUMN "late_count" INTEGER NOT NULL DEFAULT 0;
ALTER TABLE "reading_roll_up" ADD CONSTRAINT "reading_roll_up_late" CHECK ("late_count" >= 0);
