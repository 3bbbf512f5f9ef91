-- Since when exactly the newest value of a sensor has stood: a probe that is frozen is known by it.
ALTER TABLE "reading_latest" ADD COLUMN "same_since" TIMESTAMPTZ(3);
