-- The life of an alarm is held to the table of its states here as well: whatever writes an event, one that cannot happen in
-- the state the alarm is in is refused. `_core/alarms/life/transitions.json` is the same table; a test compares the two.
ALTER TABLE "alarm_occurrence" ADD COLUMN "cause_id" UUID;
ALTER TABLE "alarm_occurrence" ADD CONSTRAINT "alarm_occurrence_site_id_cause_id_fkey"
  FOREIGN KEY ("site_id", "cause_id") REFERENCES "alarm_occurrence"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE "alarm_occurrence" ADD CONSTRAINT "alarm_occurrence_no_own_cause" CHECK ("cause_id" <> "id");

ALTER TABLE "alarm_event" ADD COLUMN "seq" INTEGER NOT NULL DEFAULT 0;
ALTER TABLE "alarm_event" ADD COLUMN "state" TEXT NOT NULL DEFAULT '';

ALTER TABLE "alarm_open" ADD COLUMN "latched" BOOLEAN NOT NULL DEFAULT false;
ALTER TABLE "alarm_open" ADD COLUMN "suppressed" BOOLEAN NOT NULL DEFAULT false;
ALTER TABLE "alarm_open" ADD COLUMN "cause_id" UUID;
-- How often it has called anew since it was raised: what is said of it, and who is told, goes by that.
ALTER TABLE "alarm_open" ADD COLUMN "again" INTEGER NOT NULL DEFAULT 0;
ALTER TABLE "alarm_call" ADD COLUMN "again" INTEGER NOT NULL DEFAULT 0;
DROP INDEX "alarm_call_site_id_occurrence_id_step_account_id_channel_key";
CREATE UNIQUE INDEX "alarm_call_once" ON "alarm_call"("site_id", "occurrence_id", "again", "step", "account_id", "channel");
ALTER TABLE "alarm_open" ADD COLUMN "turn_by" TIMESTAMPTZ(3);
ALTER TABLE "alarm_open" ADD COLUMN "value_then" DOUBLE PRECISION;
-- A latched alarm that is acknowledged stays until it is reset; one that is folded under its first cause calls nobody at first.
ALTER TABLE "alarm_open" DROP CONSTRAINT "alarm_open_wants_something";
ALTER TABLE "alarm_open" ADD CONSTRAINT "alarm_open_wants_something" CHECK ("active" OR "latched" OR NOT "acknowledged");
ALTER TABLE "alarm_open" DROP CONSTRAINT "alarm_open_step_counted";
ALTER TABLE "alarm_open" ADD CONSTRAINT "alarm_open_step_counted" CHECK ("step" >= 0);

ALTER TABLE "alarm_event" DROP CONSTRAINT "alarm_event_kind_known";
ALTER TABLE "alarm_event" ADD CONSTRAINT "alarm_event_kind_known" CHECK (
  "kind" IN ('raised', 'returned', 'acknowledged', 'acknowledged-too', 'noted', 'escalated',
             'raised-again', 'recalled', 'reset', 'reset-refused', 'suppressed', 'unsuppressed', 'unfolded'));

-- The state after something happened; null where it cannot happen. "latched": whether the alarm stays until it is reset.
CREATE FUNCTION "alarm_state_after"("before" TEXT, "kind" TEXT, "latched" BOOLEAN) RETURNS TEXT
LANGUAGE sql IMMUTABLE AS $$
  SELECT t.after FROM (VALUES
    ('none', 'raised', NULL::boolean, 'unacknowledged'),
    ('unacknowledged', 'acknowledged', NULL, 'acknowledged'),
    ('unacknowledged', 'returned', false, 'returned'),
    ('unacknowledged', 'returned', true, 'latched-unacknowledged'),
    ('unacknowledged', 'suppressed', NULL, 'suppressed'),
    ('acknowledged', 'returned', false, 'over'),
    ('acknowledged', 'returned', true, 'latched-acknowledged'),
    ('acknowledged', 'recalled', NULL, 'unacknowledged'),
    ('acknowledged', 'suppressed', NULL, 'suppressed'),
    ('returned', 'acknowledged', NULL, 'over'),
    ('returned', 'suppressed', NULL, 'over'),
    ('latched-unacknowledged', 'acknowledged', NULL, 'latched-acknowledged'),
    ('latched-unacknowledged', 'raised-again', NULL, 'unacknowledged'),
    ('latched-unacknowledged', 'suppressed', NULL, 'suppressed-latched-unacknowledged'),
    ('latched-acknowledged', 'reset', NULL, 'over'),
    ('latched-acknowledged', 'raised-again', NULL, 'unacknowledged'),
    ('latched-acknowledged', 'suppressed', NULL, 'suppressed-latched-acknowledged'),
    ('suppressed', 'returned', false, 'over'),
    ('suppressed', 'returned', true, 'suppressed-latched-unacknowledged'),
    ('suppressed', 'unsuppressed', NULL, 'unacknowledged'),
    ('suppressed-latched-unacknowledged', 'raised-again', NULL, 'suppressed'),
    ('suppressed-latched-unacknowledged', 'unsuppressed', NULL, 'latched-unacknowledged'),
    ('suppressed-latched-acknowledged', 'raised-again', NULL, 'suppressed'),
    ('suppressed-latched-acknowledged', 'unsuppressed', NULL, 'latched-acknowledged')
  ) AS t("before", "kind", "latched", "after")
  WHERE t."before" = $1 AND t."kind" = $2 AND (t."latched" IS NULL OR t."latched" = $3)
$$;

-- Whether something is said of an alarm that changes nothing of its state: a note at any time, a second acknowledgement once
-- there is a first, a reset that was refused while its condition was there, and calls while it is not acknowledged.
CREATE FUNCTION "alarm_event_only_tells"("before" TEXT, "kind" TEXT) RETURNS BOOLEAN
LANGUAGE sql IMMUTABLE AS $$
  SELECT CASE "kind"
    WHEN 'noted' THEN "before" <> 'none'
    WHEN 'acknowledged-too' THEN "before" IN ('acknowledged', 'latched-acknowledged', 'over')
    WHEN 'reset-refused' THEN "before" IN ('unacknowledged', 'acknowledged', 'suppressed', 'latched-unacknowledged')
    WHEN 'escalated' THEN "before" IN ('unacknowledged', 'returned', 'latched-unacknowledged')
    WHEN 'unfolded' THEN "before" IN ('unacknowledged', 'returned', 'latched-unacknowledged')
    ELSE false
  END
$$;

-- Gives an event its number within the life of its alarm and the state after it, or refuses it. Whoever writes waits for
-- whoever wrote before: what still wants something is locked, and no number is there twice.
CREATE FUNCTION "hold_alarm_event"() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
  before TEXT;
  number INTEGER;
  stays BOOLEAN;
BEGIN
  PERFORM FROM "alarm_open" o WHERE o."site_id" = NEW."site_id" AND o."occurrence_id" = NEW."occurrence_id" FOR UPDATE;
  SELECT e."state", e."seq" INTO before, number FROM "alarm_event" e
    WHERE e."site_id" = NEW."site_id" AND e."occurrence_id" = NEW."occurrence_id" ORDER BY e."seq" DESC LIMIT 1;
  SELECT coalesce((o."definition"->>'latched')::boolean, false) INTO stays FROM "alarm_occurrence" o
    WHERE o."site_id" = NEW."site_id" AND o."id" = NEW."occurrence_id";
  before := coalesce(before, 'none');
  NEW."seq" := coalesce(number, 0) + 1;
  NEW."state" := CASE WHEN "alarm_event_only_tells"(before, NEW."kind") THEN before
                      ELSE "alarm_state_after"(before, NEW."kind", coalesce(stays, false)) END;
  IF NEW."state" IS NULL THEN
    RAISE EXCEPTION 'an alarm that is % cannot be %', before, NEW."kind"
      USING ERRCODE = '23514', CONSTRAINT = 'alarm_event_lawful';
  END IF;
  RETURN NEW;
END $$;

-- What was there already gets its numbers and states in the order in which it was kept.
DROP INDEX "alarm_event_once";
ALTER TABLE "alarm_event" DISABLE TRIGGER "only_added";
DO $$
DECLARE
  one RECORD;
  at_life UUID := NULL;
  before TEXT;
  number INTEGER;
BEGIN
  FOR one IN SELECT "site_id", "id", "occurrence_id", "kind" FROM "alarm_event"
              ORDER BY "site_id", "occurrence_id", "at", "id" LOOP
    IF at_life IS DISTINCT FROM one."occurrence_id" THEN
      at_life := one."occurrence_id"; before := 'none'; number := 0;
    END IF;
    number := number + 1;
    before := coalesce("alarm_state_after"(before, one."kind", false), before);
    UPDATE "alarm_event" SET "seq" = number, "state" = before WHERE "site_id" = one."site_id" AND "id" = one."id";
  END LOOP;
END $$;
ALTER TABLE "alarm_event" ENABLE TRIGGER "only_added";
CREATE UNIQUE INDEX "alarm_event_site_id_occurrence_id_seq_key" ON "alarm_event"("site_id", "occurrence_id", "seq");
-- It begins once.
CREATE UNIQUE INDEX "alarm_event_once" ON "alarm_event" ("site_id", "occurrence_id") WHERE "kind" = 'raised';
CREATE TRIGGER "lawful" BEFORE INSERT ON "alarm_event" FOR EACH ROW EXECUTE FUNCTION "hold_alarm_event"();

-- An alarm that is shelved, suppressed by design or out of service: what was begun and ended. Rows are added and nothing else.
CREATE TABLE "alarm_suppression" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "run_id" UUID NOT NULL,
    "alarm_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "what" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "until" TIMESTAMPTZ(3),
    "by" TEXT,
    "owner" TEXT,
    "reason" TEXT,
    "detail" JSONB NOT NULL,

    CONSTRAINT "alarm_suppression_pkey" PRIMARY KEY ("site_id","id")
);

CREATE TABLE "alarm_suppressed" (
    "site_id" UUID NOT NULL,
    "alarm_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "run_id" UUID NOT NULL,
    "begun_at" TIMESTAMPTZ(3) NOT NULL,
    "until" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "alarm_suppressed_pkey" PRIMARY KEY ("site_id","alarm_id","kind")
);

CREATE INDEX "alarm_suppression_site_id_alarm_id_at_idx" ON "alarm_suppression"("site_id", "alarm_id", "at");
CREATE UNIQUE INDEX "alarm_suppressed_site_id_run_id_key" ON "alarm_suppressed"("site_id", "run_id");
ALTER TABLE "alarm_suppression" ADD CONSTRAINT "alarm_suppression_site_id_alarm_id_fkey" FOREIGN KEY ("site_id", "alarm_id") REFERENCES "alarm_definition"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE "alarm_suppressed" ADD CONSTRAINT "alarm_suppressed_site_id_alarm_id_fkey" FOREIGN KEY ("site_id", "alarm_id") REFERENCES "alarm_definition"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;
CREATE UNIQUE INDEX "alarm_suppression_once" ON "alarm_suppression" ("site_id", "run_id", "what");

ALTER TABLE "alarm_suppression"
  ADD CONSTRAINT "alarm_suppression_kind_known" CHECK ("kind" IN ('shelved', 'by-design', 'out-of-service')),
  ADD CONSTRAINT "alarm_suppression_what_known" CHECK ("what" IN ('begun', 'ended')),
  -- Never open-ended, never without a reason, and never by nobody.
  ADD CONSTRAINT "alarm_suppression_has_end" CHECK ("what" = 'ended' OR ("until" IS NOT NULL AND "until" > "at")),
  ADD CONSTRAINT "alarm_suppression_reasoned" CHECK (
    "what" = 'ended' OR "kind" = 'by-design' OR ("by" IS NOT NULL AND btrim(coalesce("reason", '')) <> '')),
  ADD CONSTRAINT "alarm_suppression_owned" CHECK (
    "what" = 'ended' OR "kind" <> 'out-of-service' OR "owner" IS NOT NULL),
  -- The longest a shelf or a repair may last whatever its priority: a day, and two weeks.
  ADD CONSTRAINT "alarm_suppression_not_long" CHECK (
    "what" = 'ended' OR "kind" = 'by-design' OR
    "until" - "at" <= CASE "kind" WHEN 'shelved' THEN interval '24 hours' ELSE interval '14 days' END);

-- Whether an alarm is one that is never suppressed by design nor folded: low oxygen, high temperature, oxidant, a leak.
CREATE FUNCTION "alarm_never_suppressed"("site" UUID, "alarm" UUID) RETURNS BOOLEAN LANGUAGE sql STABLE AS $$
  SELECT EXISTS (
    SELECT FROM "alarm_definition" d
      JOIN "sensor" s ON s."site_id" = d."site_id" AND s."system_id" = d."system_id" AND s."retired_at" IS NULL
                     AND s."key" = d."detail"->'on'->>'sensor'
     WHERE d."site_id" = "site" AND d."id" = "alarm"
       AND d."detail"->'on'->>'kind' IN ('sensor', 'rate')
       AND (s."quantity" IN ('oxygen', 'oxygen-saturation', 'oxidant', 'redox', 'leak')
            OR (s."quantity" = 'temperature' AND (d."detail"->'on' ? 'above' OR d."detail"->'on' ? 'risesPerHour'))))
$$;

-- Holds what is begun and ended to what is there: nothing is begun twice, nothing is ended that was not begun.
CREATE FUNCTION "hold_alarm_suppression"() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
  problem TEXT := NULL;
  runs UUID;
BEGIN
  -- Whoever changes the same alarm waits here. The processes may only add and read these rows.
  PERFORM pg_advisory_xact_lock(hashtextextended(NEW."site_id"::text || NEW."alarm_id"::text, 62682));
  SELECT b."run_id" INTO runs FROM "alarm_suppression" b
    WHERE b."site_id" = NEW."site_id" AND b."alarm_id" = NEW."alarm_id" AND b."kind" = NEW."kind" AND b."what" = 'begun'
      AND NOT EXISTS (SELECT FROM "alarm_suppression" e
                       WHERE e."site_id" = b."site_id" AND e."run_id" = b."run_id" AND e."what" = 'ended');
  IF NEW."what" = 'begun' AND runs IS NOT NULL THEN
    problem := 'is so already';
  ELSIF NEW."what" = 'begun' AND NEW."run_id" <> NEW."id" THEN
    problem := 'has to be a run of its own';
  ELSIF NEW."what" = 'ended' AND runs IS DISTINCT FROM NEW."run_id" THEN
    problem := 'is not so';
  ELSIF NEW."what" = 'begun' AND "alarm_never_suppressed"(NEW."site_id", NEW."alarm_id") THEN
    problem := CASE NEW."kind"
      WHEN 'by-design' THEN 'is never allowed: what it watches is never suppressed'
      WHEN 'shelved' THEN CASE WHEN NEW."until" - NEW."at" > interval '1 hour' THEN 'is too long for what it watches: an hour at most' END
      ELSE CASE WHEN NEW."until" - NEW."at" > interval '8 hours' THEN 'is too long for what it watches: 8 hours at most' END
    END;
  END IF;
  IF problem IS NOT NULL THEN
    RAISE EXCEPTION '% of an alarm (%) %', NEW."kind", NEW."what", problem
      USING ERRCODE = '23514', CONSTRAINT = 'alarm_suppression_lawful';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER "lawful" BEFORE INSERT ON "alarm_suppression" FOR EACH ROW EXECUTE FUNCTION "hold_alarm_suppression"();
CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "alarm_suppression" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "never_emptied" BEFORE TRUNCATE ON "alarm_suppression" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
