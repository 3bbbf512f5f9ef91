-- CreateTable
CREATE TABLE "reading_touched" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "sensor_ids" UUID[],
    "froms" TIMESTAMPTZ(3)[],
    "tos" TIMESTAMPTZ(3)[],

    CONSTRAINT "reading_touched_pkey" PRIMARY KEY ("site_id","id")
);

-- CreateTable
CREATE TABLE "reading_due" (
    "site_id" UUID NOT NULL,
    "sensor_id" UUID NOT NULL,
    "is_day" BOOLEAN NOT NULL,
    "from_at" TIMESTAMPTZ(3) NOT NULL,
    "to_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "reading_due_pkey" PRIMARY KEY ("site_id","sensor_id","is_day","from_at")
);

-- CreateTable
CREATE TABLE "reading_roll_up" (
    "site_id" UUID NOT NULL,
    "sensor_id" UUID NOT NULL,
    "is_day" BOOLEAN NOT NULL,
    "from_at" TIMESTAMPTZ(3) NOT NULL,
    "by_hand" BOOLEAN NOT NULL,
    "to_at" TIMESTAMPTZ(3) NOT NULL,
    "good_count" INTEGER NOT NULL,
    "good_sum" DOUBLE PRECISION NOT NULL,
    "good_min" DOUBLE PRECISION,
    "good_max" DOUBLE PRECISION,
    "good_s" DOUBLE PRECISION NOT NULL,
    "good_outside_s" DOUBLE PRECISION NOT NULL,
    "suspect_count" INTEGER NOT NULL,
    "suspect_sum" DOUBLE PRECISION NOT NULL,
    "suspect_min" DOUBLE PRECISION,
    "suspect_max" DOUBLE PRECISION,
    "suspect_s" DOUBLE PRECISION NOT NULL,
    "suspect_outside_s" DOUBLE PRECISION NOT NULL,
    "bad_count" INTEGER NOT NULL,

    CONSTRAINT "reading_roll_up_pkey" PRIMARY KEY ("site_id","sensor_id","is_day","from_at","by_hand")
);

-- CreateTable
CREATE TABLE "reading_limit" (
    "site_id" UUID NOT NULL,
    "sensor_id" UUID NOT NULL,
    "since" TIMESTAMPTZ(3) NOT NULL,
    "above" DOUBLE PRECISION,
    "below" DOUBLE PRECISION,

    CONSTRAINT "reading_limit_pkey" PRIMARY KEY ("site_id","sensor_id","since")
);

-- CreateTable
CREATE TABLE "derived_series" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "system_id" UUID NOT NULL,
    "key" TEXT NOT NULL,
    "made_at" TIMESTAMPTZ(3) NOT NULL,
    "retired_at" TIMESTAMPTZ(3),
    "at" TIMESTAMPTZ(3),
    "value" DOUBLE PRECISION,
    "quality" SMALLINT,
    "reason" TEXT,
    "received_at" TIMESTAMPTZ(3),
    "good_at" TIMESTAMPTZ(3),
    "good_value" DOUBLE PRECISION,

    CONSTRAINT "derived_series_pkey" PRIMARY KEY ("site_id","id")
);

-- CreateTable
CREATE TABLE "reading_turn" (
    "site_id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,

    CONSTRAINT "reading_turn_pkey" PRIMARY KEY ("site_id")
);

-- CreateTable
CREATE TABLE "reading_retired" (
    "month" DATE NOT NULL,
    "retired_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "reading_retired_pkey" PRIMARY KEY ("month")
);

-- CreateTable
CREATE TABLE "reading_rolled" (
    "id" INTEGER NOT NULL,
    "over_before" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "reading_rolled_pkey" PRIMARY KEY ("id")
);

-- AddForeignKey
ALTER TABLE "reading_touched" ADD CONSTRAINT "reading_touched_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "derived_series" ADD CONSTRAINT "derived_series_site_id_system_id_fkey" FOREIGN KEY ("site_id", "system_id") REFERENCES "system"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "reading_turn" ADD CONSTRAINT "reading_turn_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- What Prisma has no word for follows.

ALTER TABLE "reading_touched"
  ADD CONSTRAINT "reading_touched_even" CHECK (
    cardinality("froms") = cardinality("sensor_ids") AND cardinality("tos") = cardinality("sensor_ids"));
ALTER TABLE "reading_due" ADD CONSTRAINT "reading_due_forward" CHECK ("from_at" < "to_at");
ALTER TABLE "reading_roll_up"
  ADD CONSTRAINT "reading_roll_up_counted" CHECK (
    "good_count" >= 0 AND "suspect_count" >= 0 AND "bad_count" >= 0
    AND ("good_count" = 0) = ("good_min" IS NULL) AND ("good_count" = 0) = ("good_max" IS NULL)
    AND ("suspect_count" = 0) = ("suspect_min" IS NULL) AND ("suspect_count" = 0) = ("suspect_max" IS NULL)
    AND "good_outside_s" BETWEEN 0 AND "good_s" AND "suspect_outside_s" BETWEEN 0 AND "suspect_s");
ALTER TABLE "reading_retired" ADD CONSTRAINT "reading_retired_month" CHECK (extract(day FROM "month") = 1);

ALTER TABLE "reading_rolled" ADD CONSTRAINT "reading_rolled_once" CHECK ("id" = 1);

-- Keys are unique among the living.
CREATE UNIQUE INDEX "derived_series_living" ON "derived_series" ("site_id", "system_id", "key") WHERE "retired_at" IS NULL;
-- What is ripe is looked for over all sites.
CREATE INDEX "reading_due_ripe" ON "reading_due" ("to_at");
-- Readings shown by themselves are few: a year of them is found without looking through the others.
CREATE INDEX "reading_odd" ON "reading" ("site_id", "sensor_id", "at") WHERE "quality" > 0 OR "origin" = 3;

CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "reading_limit" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "never_emptied" BEFORE TRUNCATE ON "reading_limit" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "reading_retired" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "never_emptied" BEFORE TRUNCATE ON "reading_retired" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();

-- What is there already is rolled up by the worker, as if it had come now.
INSERT INTO "reading_touched" ("site_id", "id", "sensor_ids", "froms", "tos")
SELECT d.site_id, gen_random_uuid(), array_agg(d.sensor_id), array_agg(d.first), array_agg(d.last)
  FROM (SELECT site_id, sensor_id, date_trunc('day', "at") AS day, min("at") AS first, max("at") AS last
          FROM "reading" GROUP BY 1, 2, 3) d
 GROUP BY d.site_id, d.sensor_id, date_trunc('month', d.day);
