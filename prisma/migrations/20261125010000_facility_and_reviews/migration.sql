-- A site as its facility file describes it, its record, and the reviews of its systems.
--
-- Every table of a site's data has site_id first in its primary key, its unique keys and its foreign keys. The register of
-- sites itself is shared. What is written by hand stands at the end: keys that are unique among the living only, words that
-- a column may hold, tables whose rows are added and never changed, and the plan that is in force.

-- CreateTable
CREATE TABLE "site" (
    "id" UUID NOT NULL,
    "key" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "zone" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "detail" JSONB NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "site_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "person_name" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "name" TEXT,

    CONSTRAINT "person_name_pkey" PRIMARY KEY ("site_id","id")
);

-- CreateTable
CREATE TABLE "person" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "key" TEXT NOT NULL,
    "ordinal" INTEGER NOT NULL,
    "name_id" UUID NOT NULL,
    "role" TEXT NOT NULL,
    "detail" JSONB NOT NULL,
    "retired_at" TIMESTAMPTZ(3),

    CONSTRAINT "person_pkey" PRIMARY KEY ("site_id","id")
);

-- CreateTable
CREATE TABLE "room" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "key" TEXT NOT NULL,
    "ordinal" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "detail" JSONB NOT NULL,
    "retired_at" TIMESTAMPTZ(3),

    CONSTRAINT "room_pkey" PRIMARY KEY ("site_id","id")
);

-- CreateTable
CREATE TABLE "system" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "key" TEXT NOT NULL,
    "ordinal" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "room_id" UUID NOT NULL,
    "detail" JSONB NOT NULL,
    "retired_at" TIMESTAMPTZ(3),

    CONSTRAINT "system_pkey" PRIMARY KEY ("site_id","id")
);

-- CreateTable
CREATE TABLE "safeguard" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "system_id" UUID,
    "key" TEXT NOT NULL,
    "ordinal" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "test_every_days" INTEGER NOT NULL,
    "off_by_id" UUID,
    "tests" UUID[],
    "detail" JSONB NOT NULL,
    "retired_at" TIMESTAMPTZ(3),

    CONSTRAINT "safeguard_pkey" PRIMARY KEY ("site_id","id")
);

-- CreateTable
CREATE TABLE "safeguard_test" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "safeguard_id" UUID NOT NULL,
    "tested_on" DATE NOT NULL,
    "result" TEXT NOT NULL,
    "by_id" UUID,
    "withdraws" UUID,
    "recorded_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "safeguard_test_pkey" PRIMARY KEY ("site_id","id")
);

-- CreateTable
CREATE TABLE "circuit" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "key" TEXT NOT NULL,
    "ordinal" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "rcd" TEXT,
    "ups_safeguard_id" UUID,
    "detail" JSONB NOT NULL,
    "retired_at" TIMESTAMPTZ(3),

    CONSTRAINT "circuit_pkey" PRIMARY KEY ("site_id","id")
);

-- CreateTable
CREATE TABLE "monitor" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "key" TEXT NOT NULL,
    "ordinal" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "circuit_id" UUID,
    "detail" JSONB NOT NULL,
    "retired_at" TIMESTAMPTZ(3),

    CONSTRAINT "monitor_pkey" PRIMARY KEY ("site_id","id")
);

-- CreateTable
CREATE TABLE "tolerance_profile" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "key" TEXT NOT NULL,
    "ordinal" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "detail" JSONB NOT NULL,
    "retired_at" TIMESTAMPTZ(3),

    CONSTRAINT "tolerance_profile_pkey" PRIMARY KEY ("site_id","id")
);

-- CreateTable
CREATE TABLE "shift" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "key" TEXT NOT NULL,
    "ordinal" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "detail" JSONB NOT NULL,
    "retired_at" TIMESTAMPTZ(3),

    CONSTRAINT "shift_pkey" PRIMARY KEY ("site_id","id")
);

-- CreateTable
CREATE TABLE "shift_person" (
    "site_id" UUID NOT NULL,
    "shift_id" UUID NOT NULL,
    "ordinal" INTEGER NOT NULL,
    "person_id" UUID NOT NULL,

    CONSTRAINT "shift_person_pkey" PRIMARY KEY ("site_id","shift_id","ordinal")
);

-- CreateTable
CREATE TABLE "round_slot" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "key" TEXT NOT NULL,
    "ordinal" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "detail" JSONB NOT NULL,
    "retired_at" TIMESTAMPTZ(3),

    CONSTRAINT "round_slot_pkey" PRIMARY KEY ("site_id","id")
);

-- CreateTable
CREATE TABLE "tank" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "system_id" UUID NOT NULL,
    "key" TEXT NOT NULL,
    "ordinal" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "role" TEXT NOT NULL,
    "siphon_safeguard_id" UUID,
    "detail" JSONB NOT NULL,
    "retired_at" TIMESTAMPTZ(3),

    CONSTRAINT "tank_pkey" PRIMARY KEY ("site_id","id")
);

-- CreateTable
CREATE TABLE "equipment" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "system_id" UUID NOT NULL,
    "key" TEXT NOT NULL,
    "ordinal" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "type" TEXT NOT NULL,
    "tank_id" UUID NOT NULL,
    "circuit_id" UUID,
    "detail" JSONB NOT NULL,
    "retired_at" TIMESTAMPTZ(3),

    CONSTRAINT "equipment_pkey" PRIMARY KEY ("site_id","id")
);

-- CreateTable
CREATE TABLE "plan_version" (
    "site_id" UUID NOT NULL,
    "equipment_id" UUID NOT NULL,
    "version" INTEGER NOT NULL,
    "body" JSONB NOT NULL,
    "valid_from" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "plan_version_pkey" PRIMARY KEY ("site_id","equipment_id","version")
);

-- CreateTable
CREATE TABLE "plan_status" (
    "site_id" UUID NOT NULL,
    "equipment_id" UUID NOT NULL,
    "version" INTEGER NOT NULL,
    "status" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "plan_status_pkey" PRIMARY KEY ("site_id","equipment_id","version","status")
);

-- CreateTable
CREATE TABLE "sensor" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "system_id" UUID NOT NULL,
    "key" TEXT NOT NULL,
    "ordinal" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "quantity" TEXT NOT NULL,
    "tank_id" UUID,
    "equipment_id" UUID,
    "gateway_id" UUID,
    "detail" JSONB NOT NULL,
    "retired_at" TIMESTAMPTZ(3),

    CONSTRAINT "sensor_pkey" PRIMARY KEY ("site_id","id")
);

-- CreateTable
CREATE TABLE "stock" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "system_id" UUID NOT NULL,
    "key" TEXT NOT NULL,
    "ordinal" INTEGER NOT NULL,
    "species_group" TEXT NOT NULL,
    "tank_id" UUID NOT NULL,
    "count" INTEGER NOT NULL,
    "detail" JSONB NOT NULL,
    "retired_at" TIMESTAMPTZ(3),

    CONSTRAINT "stock_pkey" PRIMARY KEY ("site_id","id")
);

-- CreateTable
CREATE TABLE "alarm_definition" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "system_id" UUID NOT NULL,
    "key" TEXT NOT NULL,
    "ordinal" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "safeguard_id" UUID,
    "detail" JSONB NOT NULL,
    "retired_at" TIMESTAMPTZ(3),

    CONSTRAINT "alarm_definition_pkey" PRIMARY KEY ("site_id","id")
);

-- CreateTable
CREATE TABLE "operating_state" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "system_id" UUID NOT NULL,
    "key" TEXT NOT NULL,
    "ordinal" INTEGER NOT NULL,
    "end_safeguard_id" UUID,
    "detail" JSONB NOT NULL,
    "retired_at" TIMESTAMPTZ(3),

    CONSTRAINT "operating_state_pkey" PRIMARY KEY ("site_id","id")
);

-- CreateTable
CREATE TABLE "record" (
    "site_id" UUID NOT NULL,
    "seq" INTEGER NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "kind" TEXT NOT NULL,
    "body" JSONB NOT NULL,
    "prev_hash" BYTEA NOT NULL,
    "hash" BYTEA NOT NULL,

    CONSTRAINT "record_pkey" PRIMARY KEY ("site_id","seq")
);

-- CreateTable
CREATE TABLE "record_head" (
    "site_id" UUID NOT NULL,
    "seq" INTEGER NOT NULL,
    "hash" BYTEA NOT NULL,

    CONSTRAINT "record_head_pkey" PRIMARY KEY ("site_id")
);

-- CreateTable
CREATE TABLE "review_result" (
    "site_id" UUID NOT NULL,
    "system_id" UUID NOT NULL,
    "input_hash" TEXT NOT NULL,
    "engine_version" TEXT NOT NULL,
    "judged_on" DATE NOT NULL,
    "summary" JSONB,
    "body" JSONB,
    "computed_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "review_result_pkey" PRIMARY KEY ("site_id","system_id")
);

-- CreateTable
CREATE TABLE "review_run" (
    "site_id" UUID NOT NULL,
    "run_id" UUID NOT NULL,
    "state" TEXT NOT NULL,
    "judged_on" DATE NOT NULL,
    "engine_version" TEXT NOT NULL,
    "systems_done" INTEGER NOT NULL,
    "systems_all" INTEGER NOT NULL,
    "system_key" TEXT,
    "cases_done" INTEGER NOT NULL,
    "cases_all" INTEGER NOT NULL,
    "beat_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "review_run_pkey" PRIMARY KEY ("site_id")
);

-- CreateIndex
CREATE UNIQUE INDEX "site_key_key" ON "site"("key");

-- CreateIndex
CREATE UNIQUE INDEX "person_name_site_id_name_key" ON "person_name"("site_id", "name");

-- AddForeignKey
ALTER TABLE "person_name" ADD CONSTRAINT "person_name_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "person" ADD CONSTRAINT "person_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "person" ADD CONSTRAINT "person_site_id_name_id_fkey" FOREIGN KEY ("site_id", "name_id") REFERENCES "person_name"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "room" ADD CONSTRAINT "room_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "system" ADD CONSTRAINT "system_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "system" ADD CONSTRAINT "system_site_id_room_id_fkey" FOREIGN KEY ("site_id", "room_id") REFERENCES "room"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "safeguard" ADD CONSTRAINT "safeguard_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "safeguard" ADD CONSTRAINT "safeguard_site_id_system_id_fkey" FOREIGN KEY ("site_id", "system_id") REFERENCES "system"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "safeguard" ADD CONSTRAINT "safeguard_site_id_off_by_id_fkey" FOREIGN KEY ("site_id", "off_by_id") REFERENCES "person_name"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "safeguard_test" ADD CONSTRAINT "safeguard_test_site_id_safeguard_id_fkey" FOREIGN KEY ("site_id", "safeguard_id") REFERENCES "safeguard"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "safeguard_test" ADD CONSTRAINT "safeguard_test_site_id_by_id_fkey" FOREIGN KEY ("site_id", "by_id") REFERENCES "person_name"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "safeguard_test" ADD CONSTRAINT "safeguard_test_site_id_withdraws_fkey" FOREIGN KEY ("site_id", "withdraws") REFERENCES "safeguard_test"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "circuit" ADD CONSTRAINT "circuit_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "circuit" ADD CONSTRAINT "circuit_site_id_ups_safeguard_id_fkey" FOREIGN KEY ("site_id", "ups_safeguard_id") REFERENCES "safeguard"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "monitor" ADD CONSTRAINT "monitor_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "monitor" ADD CONSTRAINT "monitor_site_id_circuit_id_fkey" FOREIGN KEY ("site_id", "circuit_id") REFERENCES "circuit"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "tolerance_profile" ADD CONSTRAINT "tolerance_profile_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "shift" ADD CONSTRAINT "shift_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "shift_person" ADD CONSTRAINT "shift_person_site_id_shift_id_fkey" FOREIGN KEY ("site_id", "shift_id") REFERENCES "shift"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "shift_person" ADD CONSTRAINT "shift_person_site_id_person_id_fkey" FOREIGN KEY ("site_id", "person_id") REFERENCES "person"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "round_slot" ADD CONSTRAINT "round_slot_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "tank" ADD CONSTRAINT "tank_site_id_system_id_fkey" FOREIGN KEY ("site_id", "system_id") REFERENCES "system"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "tank" ADD CONSTRAINT "tank_site_id_siphon_safeguard_id_fkey" FOREIGN KEY ("site_id", "siphon_safeguard_id") REFERENCES "safeguard"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "equipment" ADD CONSTRAINT "equipment_site_id_system_id_fkey" FOREIGN KEY ("site_id", "system_id") REFERENCES "system"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "equipment" ADD CONSTRAINT "equipment_site_id_tank_id_fkey" FOREIGN KEY ("site_id", "tank_id") REFERENCES "tank"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "equipment" ADD CONSTRAINT "equipment_site_id_circuit_id_fkey" FOREIGN KEY ("site_id", "circuit_id") REFERENCES "circuit"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "plan_version" ADD CONSTRAINT "plan_version_site_id_equipment_id_fkey" FOREIGN KEY ("site_id", "equipment_id") REFERENCES "equipment"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "plan_status" ADD CONSTRAINT "plan_status_site_id_equipment_id_version_fkey" FOREIGN KEY ("site_id", "equipment_id", "version") REFERENCES "plan_version"("site_id", "equipment_id", "version") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "sensor" ADD CONSTRAINT "sensor_site_id_system_id_fkey" FOREIGN KEY ("site_id", "system_id") REFERENCES "system"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "sensor" ADD CONSTRAINT "sensor_site_id_tank_id_fkey" FOREIGN KEY ("site_id", "tank_id") REFERENCES "tank"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "sensor" ADD CONSTRAINT "sensor_site_id_equipment_id_fkey" FOREIGN KEY ("site_id", "equipment_id") REFERENCES "equipment"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "sensor" ADD CONSTRAINT "sensor_site_id_gateway_id_fkey" FOREIGN KEY ("site_id", "gateway_id") REFERENCES "monitor"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "stock" ADD CONSTRAINT "stock_site_id_system_id_fkey" FOREIGN KEY ("site_id", "system_id") REFERENCES "system"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "stock" ADD CONSTRAINT "stock_site_id_tank_id_fkey" FOREIGN KEY ("site_id", "tank_id") REFERENCES "tank"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "alarm_definition" ADD CONSTRAINT "alarm_definition_site_id_system_id_fkey" FOREIGN KEY ("site_id", "system_id") REFERENCES "system"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "alarm_definition" ADD CONSTRAINT "alarm_definition_site_id_safeguard_id_fkey" FOREIGN KEY ("site_id", "safeguard_id") REFERENCES "safeguard"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "operating_state" ADD CONSTRAINT "operating_state_site_id_system_id_fkey" FOREIGN KEY ("site_id", "system_id") REFERENCES "system"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "operating_state" ADD CONSTRAINT "operating_state_site_id_end_safeguard_id_fkey" FOREIGN KEY ("site_id", "end_safeguard_id") REFERENCES "safeguard"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "record" ADD CONSTRAINT "record_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "record_head" ADD CONSTRAINT "record_head_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "review_result" ADD CONSTRAINT "review_result_site_id_system_id_fkey" FOREIGN KEY ("site_id", "system_id") REFERENCES "system"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "review_run" ADD CONSTRAINT "review_run_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- By hand from here on. ---------------------------------------------------------------------------------------------------

-- A key is taken as long as what bears it is in the file; afterwards it is free again. These indexes are not in
-- schema.prisma: an upsert of Prisma would pick them and fail.
CREATE UNIQUE INDEX "person_living_key" ON "person"("site_id", "key") WHERE "retired_at" IS NULL;
CREATE UNIQUE INDEX "room_living_key" ON "room"("site_id", "key") WHERE "retired_at" IS NULL;
CREATE UNIQUE INDEX "system_living_key" ON "system"("site_id", "key") WHERE "retired_at" IS NULL;
CREATE UNIQUE INDEX "circuit_living_key" ON "circuit"("site_id", "key") WHERE "retired_at" IS NULL;
CREATE UNIQUE INDEX "monitor_living_key" ON "monitor"("site_id", "key") WHERE "retired_at" IS NULL;
CREATE UNIQUE INDEX "tolerance_profile_living_key" ON "tolerance_profile"("site_id", "key") WHERE "retired_at" IS NULL;
CREATE UNIQUE INDEX "shift_living_key" ON "shift"("site_id", "key") WHERE "retired_at" IS NULL;
CREATE UNIQUE INDEX "round_slot_living_key" ON "round_slot"("site_id", "key") WHERE "retired_at" IS NULL;
CREATE UNIQUE INDEX "safeguard_living_site_key" ON "safeguard"("site_id", "key")
  WHERE "retired_at" IS NULL AND "system_id" IS NULL;
CREATE UNIQUE INDEX "safeguard_living_key" ON "safeguard"("site_id", "system_id", "key") WHERE "retired_at" IS NULL;
CREATE UNIQUE INDEX "tank_living_key" ON "tank"("site_id", "system_id", "key") WHERE "retired_at" IS NULL;
CREATE UNIQUE INDEX "equipment_living_key" ON "equipment"("site_id", "system_id", "key") WHERE "retired_at" IS NULL;
CREATE UNIQUE INDEX "sensor_living_key" ON "sensor"("site_id", "system_id", "key") WHERE "retired_at" IS NULL;
CREATE UNIQUE INDEX "stock_living_key" ON "stock"("site_id", "system_id", "key") WHERE "retired_at" IS NULL;
CREATE UNIQUE INDEX "alarm_definition_living_key" ON "alarm_definition"("site_id", "system_id", "key")
  WHERE "retired_at" IS NULL;
CREATE UNIQUE INDEX "operating_state_living_key" ON "operating_state"("site_id", "system_id", "key")
  WHERE "retired_at" IS NULL;

ALTER TABLE "safeguard_test"
  ADD CONSTRAINT "safeguard_test_result_known" CHECK ("result" IN ('worked', 'failed', 'withdrawn')),
  ADD CONSTRAINT "safeguard_test_withdraws_one" CHECK (("result" = 'withdrawn') = ("withdraws" IS NOT NULL));
ALTER TABLE "plan_version"
  ADD CONSTRAINT "plan_version_from_one" CHECK ("version" >= 1);
ALTER TABLE "plan_status"
  ADD CONSTRAINT "plan_status_known" CHECK ("status" IN ('draft', 'submitted', 'in-force', 'superseded'));
ALTER TABLE "record"
  ADD CONSTRAINT "record_from_one" CHECK ("seq" >= 1),
  ADD CONSTRAINT "record_sealed" CHECK (octet_length("prev_hash") = 32 AND octet_length("hash") = 32);
ALTER TABLE "record_head"
  ADD CONSTRAINT "record_head_sealed" CHECK ("seq" >= 0 AND octet_length("hash") = 32);
ALTER TABLE "review_result"
  ADD CONSTRAINT "review_result_whole" CHECK (("summary" IS NULL) = ("body" IS NULL));
ALTER TABLE "review_run"
  ADD CONSTRAINT "review_run_state_known" CHECK ("state" IN ('waiting', 'running', 'done'));

-- A withdrawal is the only row that may name a test, and it names each once.
CREATE UNIQUE INDEX "safeguard_test_withdrawn_once" ON "safeguard_test"("site_id", "withdraws")
  WHERE "withdraws" IS NOT NULL;

-- Rows of these tables are added and nothing else, whoever asks.
CREATE FUNCTION "refuse_change"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION 'rows of % are added and never changed or removed', TG_TABLE_NAME USING ERRCODE = 'restrict_violation';
END;
$$;

CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "record" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "never_emptied" BEFORE TRUNCATE ON "record" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "plan_version" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "never_emptied" BEFORE TRUNCATE ON "plan_version" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "plan_status" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "never_emptied" BEFORE TRUNCATE ON "plan_status" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "safeguard_test" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "never_emptied" BEFORE TRUNCATE ON "safeguard_test"
  FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();

-- The plan each piece of equipment runs by: the version that came into force and was not superseded.
CREATE VIEW "plan_in_force" AS
  SELECT v."site_id", v."equipment_id", v."version", v."body", v."valid_from"
    FROM "plan_version" v
    JOIN "plan_status" s USING ("site_id", "equipment_id", "version")
   WHERE s."status" = 'in-force'
     AND NOT EXISTS (
       SELECT FROM "plan_status" l
        WHERE l."site_id" = v."site_id" AND l."equipment_id" = v."equipment_id" AND l."version" = v."version"
          AND l."status" = 'superseded');
