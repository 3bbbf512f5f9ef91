-- Hours and days that were rolled up before it was counted what came late say so by null, not by none. They are those whose row
-- is older than the rule of that count, by the numbers of the transactions that made them; what was rolled up anew since is
-- newer. Nothing by hand and nothing derived comes late, and where there is no reading none did: their none is true.
ALTER TABLE "reading_roll_up" ALTER COLUMN "late_count" DROP NOT NULL, ALTER COLUMN "late_count" DROP DEFAULT;
UPDATE "reading_roll_up" r SET "late_count" = NULL
 WHERE NOT r."by_hand" AND r."good_count" + r."suspect_count" + r."bad_count" > 0
   AND EXISTS (SELECT FROM "sensor" s WHERE s."site_id" = r."site_id" AND s."id" = r."sensor_id")
   AND age(r.xmin) > (SELECT age(c.xmin) FROM pg_constraint c
                       WHERE c.conrelid = '"reading_roll_up"'::regclass AND c.conname = 'reading_roll_up_late');
