-- CreateTable
CREATE TABLE "reading_source" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "token_hash" BYTEA NOT NULL,
    "gateway_id" UUID,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "created_by" TEXT NOT NULL,
    "ended_at" TIMESTAMPTZ(3),
    "used_at" TIMESTAMPTZ(3),

    CONSTRAINT "reading_source_pkey" PRIMARY KEY ("site_id","id")
);

-- CreateTable
CREATE TABLE "sensor_alias" (
    "site_id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "sensor_id" UUID NOT NULL,

    CONSTRAINT "sensor_alias_pkey" PRIMARY KEY ("site_id","name")
);

-- CreateTable
CREATE TABLE "unknown_name" (
    "site_id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "seen_at" TIMESTAMPTZ(3) NOT NULL,
    "unit" TEXT,
    "value" DOUBLE PRECISION,

    CONSTRAINT "unknown_name_pkey" PRIMARY KEY ("site_id","name")
);

-- CreateTable
CREATE TABLE "reading" (
    "site_id" UUID NOT NULL,
    "sensor_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "origin" SMALLINT NOT NULL,
    "revision" SMALLINT NOT NULL,
    "value" DOUBLE PRECISION NOT NULL,
    "quality" SMALLINT NOT NULL,
    "reason" TEXT,
    "flag" TEXT,
    "came_by" UUID,
    "received_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "reading_pkey" PRIMARY KEY ("site_id","sensor_id","at","origin","revision")
) PARTITION BY RANGE ("at");

-- CreateTable
CREATE TABLE "reading_latest" (
    "site_id" UUID NOT NULL,
    "sensor_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "origin" SMALLINT NOT NULL,
    "value" DOUBLE PRECISION NOT NULL,
    "quality" SMALLINT NOT NULL,
    "reason" TEXT,
    "received_at" TIMESTAMPTZ(3) NOT NULL,
    "good_at" TIMESTAMPTZ(3),
    "good_value" DOUBLE PRECISION,

    CONSTRAINT "reading_latest_pkey" PRIMARY KEY ("site_id","sensor_id")
);

-- CreateTable
CREATE TABLE "reading_arrival" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "received_at" TIMESTAMPTZ(3) NOT NULL,
    "sensor_ids" UUID[],
    "ats" TIMESTAMPTZ(3)[],
    "values" DOUBLE PRECISION[],
    "qualities" SMALLINT[],
    "origins" SMALLINT[],

    CONSTRAINT "reading_arrival_pkey" PRIMARY KEY ("site_id","id")
);

-- CreateTable
CREATE TABLE "file_layout" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "layout" JSONB NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "created_by" TEXT NOT NULL,

    CONSTRAINT "file_layout_pkey" PRIMARY KEY ("site_id","id")
);

-- CreateTable
CREATE TABLE "file_import" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "layout_id" UUID NOT NULL,
    "file_name" TEXT NOT NULL,
    "sha256" BYTEA NOT NULL,
    "imported_at" TIMESTAMPTZ(3) NOT NULL,
    "imported_by" TEXT NOT NULL,
    "outcome" JSONB NOT NULL,

    CONSTRAINT "file_import_pkey" PRIMARY KEY ("site_id","id")
);

-- CreateTable
CREATE TABLE "alarm_turn" (
    "site_id" UUID NOT NULL,
    "judged_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "alarm_turn_pkey" PRIMARY KEY ("site_id")
);

-- CreateTable
CREATE TABLE "alarm_watch" (
    "site_id" UUID NOT NULL,
    "alarm_id" UUID NOT NULL,
    "phase" TEXT NOT NULL,
    "since" TIMESTAMPTZ(3) NOT NULL,
    "due_at" TIMESTAMPTZ(3),
    "last_at" TIMESTAMPTZ(3),
    "last_value" DOUBLE PRECISION,
    "occurrence_id" UUID,
    "definition" TEXT NOT NULL,

    CONSTRAINT "alarm_watch_pkey" PRIMARY KEY ("site_id","alarm_id")
);

-- CreateTable
CREATE TABLE "alarm_occurrence" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "alarm_id" UUID NOT NULL,
    "system_id" UUID NOT NULL,
    "began_at" TIMESTAMPTZ(3) NOT NULL,
    "raised_at" TIMESTAMPTZ(3) NOT NULL,
    "value" DOUBLE PRECISION,
    "definition" JSONB NOT NULL,

    CONSTRAINT "alarm_occurrence_pkey" PRIMARY KEY ("site_id","id")
);

-- CreateTable
CREATE TABLE "alarm_event" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "occurrence_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "by" TEXT,
    "from" TEXT,
    "note" TEXT,
    "detail" JSONB NOT NULL,

    CONSTRAINT "alarm_event_pkey" PRIMARY KEY ("site_id","id")
);

-- CreateTable
CREATE TABLE "alarm_open" (
    "site_id" UUID NOT NULL,
    "occurrence_id" UUID NOT NULL,
    "alarm_id" UUID NOT NULL,
    "system_id" UUID NOT NULL,
    "raised_at" TIMESTAMPTZ(3) NOT NULL,
    "active" BOOLEAN NOT NULL,
    "acknowledged" BOOLEAN NOT NULL,
    "step" INTEGER NOT NULL,
    "next_step_at" TIMESTAMPTZ(3),

    CONSTRAINT "alarm_open_pkey" PRIMARY KEY ("site_id","occurrence_id")
);

-- CreateTable
CREATE TABLE "alarm_call" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "occurrence_id" UUID NOT NULL,
    "step" INTEGER NOT NULL,
    "account_id" UUID NOT NULL,
    "channel" TEXT NOT NULL,
    "why" TEXT NOT NULL,
    "made_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "alarm_call_pkey" PRIMARY KEY ("site_id","id")
);

-- CreateTable
CREATE TABLE "alarm_call_try" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "call_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "result" TEXT NOT NULL,
    "detail" TEXT,

    CONSTRAINT "alarm_call_try_pkey" PRIMARY KEY ("site_id","id")
);

-- CreateTable
CREATE TABLE "state_event" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "run_id" UUID NOT NULL,
    "system_id" UUID NOT NULL,
    "state" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "until" TIMESTAMPTZ(3),
    "by" TEXT NOT NULL,
    "note" TEXT,

    CONSTRAINT "state_event_pkey" PRIMARY KEY ("site_id","id")
);

-- CreateTable
CREATE TABLE "round" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "slot_id" UUID,
    "name" TEXT NOT NULL,
    "due_at" TIMESTAMPTZ(3) NOT NULL,
    "begun_at" TIMESTAMPTZ(3) NOT NULL,
    "begun_by" TEXT NOT NULL,
    "sheet" JSONB NOT NULL,

    CONSTRAINT "round_pkey" PRIMARY KEY ("site_id","id")
);

-- CreateTable
CREATE TABLE "round_entry" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "round_id" UUID NOT NULL,
    "check_key" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "recorded_at" TIMESTAMPTZ(3) NOT NULL,
    "by" TEXT NOT NULL,
    "value" JSONB,
    "not_done" TEXT,
    "note" TEXT,
    "supersedes" UUID,
    "reason" TEXT,

    CONSTRAINT "round_entry_pkey" PRIMARY KEY ("site_id","id")
);

-- CreateTable
CREATE TABLE "round_signature" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "round_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "by" TEXT NOT NULL,
    "note" TEXT,

    CONSTRAINT "round_signature_pkey" PRIMARY KEY ("site_id","id")
);

-- CreateTable
CREATE TABLE "calendar_feed" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "account_id" UUID NOT NULL,
    "token_hash" BYTEA NOT NULL,
    "scope" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "ended_at" TIMESTAMPTZ(3),

    CONSTRAINT "calendar_feed_pkey" PRIMARY KEY ("site_id","id")
);

-- CreateTable
CREATE TABLE "incident" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "number" INTEGER NOT NULL,
    "title" TEXT NOT NULL,
    "system_id" UUID,
    "occurrence_id" UUID,
    "opened_at" TIMESTAMPTZ(3) NOT NULL,
    "opened_by" TEXT NOT NULL,

    CONSTRAINT "incident_pkey" PRIMARY KEY ("site_id","id")
);

-- CreateTable
CREATE TABLE "incident_entry" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "incident_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "recorded_at" TIMESTAMPTZ(3) NOT NULL,
    "by" TEXT NOT NULL,
    "body" JSONB NOT NULL,
    "supersedes" UUID,
    "reason" TEXT,

    CONSTRAINT "incident_entry_pkey" PRIMARY KEY ("site_id","id")
);

-- CreateIndex
CREATE UNIQUE INDEX "reading_source_site_id_token_hash_key" ON "reading_source"("site_id", "token_hash");

-- CreateIndex
CREATE INDEX "alarm_occurrence_site_id_system_id_raised_at_idx" ON "alarm_occurrence"("site_id", "system_id", "raised_at");

-- CreateIndex
CREATE INDEX "alarm_event_site_id_occurrence_id_at_idx" ON "alarm_event"("site_id", "occurrence_id", "at");

-- CreateIndex
CREATE UNIQUE INDEX "alarm_call_site_id_occurrence_id_step_account_id_channel_key" ON "alarm_call"("site_id", "occurrence_id", "step", "account_id", "channel");

-- CreateIndex
CREATE INDEX "alarm_call_try_site_id_call_id_idx" ON "alarm_call_try"("site_id", "call_id");

-- CreateIndex
CREATE INDEX "state_event_site_id_system_id_at_idx" ON "state_event"("site_id", "system_id", "at");

-- CreateIndex
CREATE INDEX "round_site_id_due_at_idx" ON "round"("site_id", "due_at");

-- CreateIndex
CREATE UNIQUE INDEX "round_site_id_slot_id_due_at_key" ON "round"("site_id", "slot_id", "due_at");

-- CreateIndex
CREATE INDEX "round_entry_site_id_round_id_idx" ON "round_entry"("site_id", "round_id");

-- CreateIndex
CREATE UNIQUE INDEX "round_signature_site_id_round_id_kind_by_key" ON "round_signature"("site_id", "round_id", "kind", "by");

-- CreateIndex
CREATE UNIQUE INDEX "calendar_feed_site_id_token_hash_key" ON "calendar_feed"("site_id", "token_hash");

-- CreateIndex
CREATE UNIQUE INDEX "incident_site_id_number_key" ON "incident"("site_id", "number");

-- CreateIndex
CREATE INDEX "incident_entry_site_id_incident_id_at_idx" ON "incident_entry"("site_id", "incident_id", "at");

-- AddForeignKey
ALTER TABLE "reading_source" ADD CONSTRAINT "reading_source_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "reading_source" ADD CONSTRAINT "reading_source_site_id_gateway_id_fkey" FOREIGN KEY ("site_id", "gateway_id") REFERENCES "monitor"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "sensor_alias" ADD CONSTRAINT "sensor_alias_site_id_sensor_id_fkey" FOREIGN KEY ("site_id", "sensor_id") REFERENCES "sensor"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "unknown_name" ADD CONSTRAINT "unknown_name_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "reading_latest" ADD CONSTRAINT "reading_latest_site_id_sensor_id_fkey" FOREIGN KEY ("site_id", "sensor_id") REFERENCES "sensor"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "reading_arrival" ADD CONSTRAINT "reading_arrival_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "file_layout" ADD CONSTRAINT "file_layout_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "file_import" ADD CONSTRAINT "file_import_site_id_layout_id_fkey" FOREIGN KEY ("site_id", "layout_id") REFERENCES "file_layout"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "alarm_turn" ADD CONSTRAINT "alarm_turn_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "alarm_watch" ADD CONSTRAINT "alarm_watch_site_id_alarm_id_fkey" FOREIGN KEY ("site_id", "alarm_id") REFERENCES "alarm_definition"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "alarm_occurrence" ADD CONSTRAINT "alarm_occurrence_site_id_alarm_id_fkey" FOREIGN KEY ("site_id", "alarm_id") REFERENCES "alarm_definition"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "alarm_occurrence" ADD CONSTRAINT "alarm_occurrence_site_id_system_id_fkey" FOREIGN KEY ("site_id", "system_id") REFERENCES "system"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "alarm_event" ADD CONSTRAINT "alarm_event_site_id_occurrence_id_fkey" FOREIGN KEY ("site_id", "occurrence_id") REFERENCES "alarm_occurrence"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "alarm_open" ADD CONSTRAINT "alarm_open_site_id_occurrence_id_fkey" FOREIGN KEY ("site_id", "occurrence_id") REFERENCES "alarm_occurrence"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "alarm_call" ADD CONSTRAINT "alarm_call_site_id_occurrence_id_fkey" FOREIGN KEY ("site_id", "occurrence_id") REFERENCES "alarm_occurrence"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "alarm_call_try" ADD CONSTRAINT "alarm_call_try_site_id_call_id_fkey" FOREIGN KEY ("site_id", "call_id") REFERENCES "alarm_call"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "state_event" ADD CONSTRAINT "state_event_site_id_system_id_fkey" FOREIGN KEY ("site_id", "system_id") REFERENCES "system"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "round" ADD CONSTRAINT "round_site_id_slot_id_fkey" FOREIGN KEY ("site_id", "slot_id") REFERENCES "round_slot"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "round_entry" ADD CONSTRAINT "round_entry_site_id_round_id_fkey" FOREIGN KEY ("site_id", "round_id") REFERENCES "round"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "round_entry" ADD CONSTRAINT "round_entry_site_id_supersedes_fkey" FOREIGN KEY ("site_id", "supersedes") REFERENCES "round_entry"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "round_signature" ADD CONSTRAINT "round_signature_site_id_round_id_fkey" FOREIGN KEY ("site_id", "round_id") REFERENCES "round"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "calendar_feed" ADD CONSTRAINT "calendar_feed_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "incident" ADD CONSTRAINT "incident_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "incident" ADD CONSTRAINT "incident_site_id_system_id_fkey" FOREIGN KEY ("site_id", "system_id") REFERENCES "system"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "incident" ADD CONSTRAINT "incident_site_id_occurrence_id_fkey" FOREIGN KEY ("site_id", "occurrence_id") REFERENCES "alarm_occurrence"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "incident_entry" ADD CONSTRAINT "incident_entry_site_id_incident_id_fkey" FOREIGN KEY ("site_id", "incident_id") REFERENCES "incident"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "incident_entry" ADD CONSTRAINT "incident_entry_site_id_supersedes_fkey" FOREIGN KEY ("site_id", "supersedes") REFERENCES "incident_entry"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- From here on what Prisma has no word for.

ALTER TABLE "reading"
  ADD CONSTRAINT "reading_known" CHECK ("origin" IN (1, 2, 3) AND "quality" IN (0, 1, 2) AND "revision" >= 0),
  ADD CONSTRAINT "reading_reasoned" CHECK (("quality" = 0) = ("reason" IS NULL)),
  ADD CONSTRAINT "reading_is_a_number" CHECK ("value" > '-Infinity' AND "value" < 'Infinity');
ALTER TABLE "reading_source" ADD CONSTRAINT "reading_source_hashed" CHECK (octet_length("token_hash") = 32);
ALTER TABLE "calendar_feed"
  ADD CONSTRAINT "calendar_feed_hashed" CHECK (octet_length("token_hash") = 32),
  ADD CONSTRAINT "calendar_feed_scope_known" CHECK ("scope" IN ('mine', 'everybody'));
ALTER TABLE "reading_arrival"
  ADD CONSTRAINT "reading_arrival_even" CHECK (
    cardinality("ats") = cardinality("sensor_ids") AND cardinality("values") = cardinality("sensor_ids")
    AND cardinality("qualities") = cardinality("sensor_ids") AND cardinality("origins") = cardinality("sensor_ids"));
ALTER TABLE "alarm_watch"
  ADD CONSTRAINT "alarm_watch_phase_known" CHECK ("phase" IN ('normal', 'pending', 'active', 'clearing')),
  ADD CONSTRAINT "alarm_watch_raised" CHECK (("phase" IN ('active', 'clearing')) = ("occurrence_id" IS NOT NULL));
ALTER TABLE "alarm_event"
  ADD CONSTRAINT "alarm_event_kind_known" CHECK (
    "kind" IN ('raised', 'returned', 'acknowledged', 'acknowledged-too', 'noted', 'escalated'));
ALTER TABLE "alarm_open"
  ADD CONSTRAINT "alarm_open_wants_something" CHECK ("active" OR NOT "acknowledged"),
  ADD CONSTRAINT "alarm_open_step_counted" CHECK ("step" >= 1);
ALTER TABLE "alarm_call" ADD CONSTRAINT "alarm_call_channel_known" CHECK ("channel" IN ('mail'));
ALTER TABLE "alarm_call_try" ADD CONSTRAINT "alarm_call_try_result_known" CHECK ("result" IN ('taken', 'failed', 'no-way'));
ALTER TABLE "state_event" ADD CONSTRAINT "state_event_kind_known" CHECK ("kind" IN ('begun', 'put-off', 'ended'));
ALTER TABLE "round_entry"
  ADD CONSTRAINT "round_entry_says_something" CHECK (("value" IS NULL) <> ("not_done" IS NULL)),
  ADD CONSTRAINT "round_entry_reasoned" CHECK (("supersedes" IS NULL) = ("reason" IS NULL));
ALTER TABLE "round_signature" ADD CONSTRAINT "round_signature_kind_known" CHECK ("kind" IN ('signed', 'second-look'));
ALTER TABLE "incident" ADD CONSTRAINT "incident_numbered" CHECK ("number" >= 1);
ALTER TABLE "incident_entry"
  ADD CONSTRAINT "incident_entry_reasoned" CHECK (("supersedes" IS NULL) = ("reason" IS NULL));

-- An alarm is raised once, returns once and is acknowledged once an occurrence; whoever presses later is `acknowledged-too`.
CREATE UNIQUE INDEX "alarm_event_once" ON "alarm_event" ("site_id", "occurrence_id", "kind")
  WHERE "kind" IN ('raised', 'returned', 'acknowledged');
-- An entry is corrected once: whoever corrects it again corrects the correction.
CREATE UNIQUE INDEX "round_entry_corrected_once" ON "round_entry" ("site_id", "supersedes") WHERE "supersedes" IS NOT NULL;
CREATE UNIQUE INDEX "incident_entry_corrected_once" ON "incident_entry" ("site_id", "supersedes")
  WHERE "supersedes" IS NOT NULL;
-- A run of a state begins once and ends once.
CREATE UNIQUE INDEX "state_event_once" ON "state_event" ("site_id", "run_id", "kind") WHERE "kind" IN ('begun', 'ended');

CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "reading" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "never_emptied" BEFORE TRUNCATE ON "reading" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "file_import" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "never_emptied" BEFORE TRUNCATE ON "file_import" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "alarm_occurrence" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "never_emptied" BEFORE TRUNCATE ON "alarm_occurrence" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "alarm_event" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "never_emptied" BEFORE TRUNCATE ON "alarm_event" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "alarm_call" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "never_emptied" BEFORE TRUNCATE ON "alarm_call" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "alarm_call_try" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "never_emptied" BEFORE TRUNCATE ON "alarm_call_try" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "state_event" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "never_emptied" BEFORE TRUNCATE ON "state_event" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "round" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "never_emptied" BEFORE TRUNCATE ON "round" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "round_entry" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "never_emptied" BEFORE TRUNCATE ON "round_entry" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "round_signature" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "never_emptied" BEFORE TRUNCATE ON "round_signature" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "incident" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "never_emptied" BEFORE TRUNCATE ON "incident" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "incident_entry" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "never_emptied" BEFORE TRUNCATE ON "incident_entry" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();

-- The parts of the readings, a month each (UTC). They stand in a schema of their own, where the processes have no rights at
-- all: they reach readings through the whole alone, and can add a part by this function and in no other way. Whoever stores
-- a reading of a month that has no part yet makes it first; the worker makes the next ones ahead.
CREATE SCHEMA "reading_parts";

CREATE FUNCTION "make_reading_part"("day" date) RETURNS text LANGUAGE plpgsql SECURITY DEFINER
  SET search_path = pg_catalog, pg_temp AS $$
DECLARE
  first date := date_trunc('month', "day"::timestamp)::date;
  part text := 'reading_' || to_char(first, 'YYYY_MM');
BEGIN
  IF "day" < DATE '1990-01-01' OR "day" > (now() AT TIME ZONE 'UTC')::date + 400 THEN
    RAISE EXCEPTION 'no part of the readings for %', "day" USING ERRCODE = 'datetime_field_overflow';
  END IF;
  IF to_regclass(format('reading_parts.%I', part)) IS NOT NULL THEN RETURN part; END IF;
  -- Two at once: the second waits here and finds it made.
  PERFORM pg_advisory_xact_lock(hashtext('reading_parts'));
  IF to_regclass(format('reading_parts.%I', part)) IS NOT NULL THEN RETURN part; END IF;
  EXECUTE format(
    'CREATE TABLE reading_parts.%I PARTITION OF public.reading FOR VALUES FROM (%L) TO (%L)', part,
    to_char(first, 'YYYY-MM-DD') || ' 00:00:00+00', to_char(first + interval '1 month', 'YYYY-MM-DD') || ' 00:00:00+00');
  RETURN part;
END;
$$;
