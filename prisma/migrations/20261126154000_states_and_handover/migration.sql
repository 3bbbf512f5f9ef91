-- States with proof and a second look, notices, animals under watch, and the page a site is handed over with.
ALTER TABLE "state_event" ADD COLUMN "detail" JSONB;

CREATE TABLE "state_timed" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "system_id" UUID NOT NULL,
    "state" TEXT NOT NULL,
    "days" TEXT[],
    "at" TEXT NOT NULL,
    "lasts_min" DOUBLE PRECISION NOT NULL,
    "made_at" TIMESTAMPTZ(3) NOT NULL,
    "by" TEXT NOT NULL,
    "ended_at" TIMESTAMPTZ(3),
    "ended_by" TEXT,

    CONSTRAINT "state_timed_pkey" PRIMARY KEY ("site_id","id")
);

CREATE TABLE "state_asked" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "system_id" UUID NOT NULL,
    "state" TEXT NOT NULL,
    "why" TEXT NOT NULL,
    "since" TIMESTAMPTZ(3) NOT NULL,
    "asked_at" TIMESTAMPTZ(3) NOT NULL,
    "detail" JSONB NOT NULL,

    CONSTRAINT "state_asked_pkey" PRIMARY KEY ("site_id","id")
);

CREATE TABLE "state_answered" (
    "site_id" UUID NOT NULL,
    "asked_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "by" TEXT NOT NULL,
    "is_so" BOOLEAN NOT NULL,
    "run_id" UUID,

    CONSTRAINT "state_answered_pkey" PRIMARY KEY ("site_id","asked_id")
);

CREATE TABLE "signature_asked" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "system_id" UUID,
    "kind" TEXT NOT NULL,
    "about" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "by" TEXT NOT NULL,
    "note" TEXT,

    CONSTRAINT "signature_asked_pkey" PRIMARY KEY ("site_id","id")
);

CREATE TABLE "signature_given" (
    "site_id" UUID NOT NULL,
    "asked_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "by" TEXT NOT NULL,
    "is_right" BOOLEAN NOT NULL,
    "note" TEXT NOT NULL,

    CONSTRAINT "signature_given_pkey" PRIMARY KEY ("site_id","asked_id")
);

CREATE TABLE "site_notice" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "what" TEXT NOT NULL,
    "systems" TEXT[],
    "todo" TEXT NOT NULL,
    "from" TIMESTAMPTZ(3) NOT NULL,
    "until" TIMESTAMPTZ(3) NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "by" TEXT NOT NULL,

    CONSTRAINT "site_notice_pkey" PRIMARY KEY ("site_id","id")
);

CREATE TABLE "site_notice_end" (
    "site_id" UUID NOT NULL,
    "notice_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "by" TEXT NOT NULL,
    "note" TEXT,

    CONSTRAINT "site_notice_end_pkey" PRIMARY KEY ("site_id","notice_id")
);

CREATE TABLE "animal_watch" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "system_id" UUID NOT NULL,
    "what" TEXT NOT NULL,
    "why" TEXT NOT NULL,
    "until" TIMESTAMPTZ(3) NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "by" TEXT NOT NULL,

    CONSTRAINT "animal_watch_pkey" PRIMARY KEY ("site_id","id")
);

CREATE TABLE "animal_watch_end" (
    "site_id" UUID NOT NULL,
    "watch_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "by" TEXT NOT NULL,
    "note" TEXT NOT NULL,

    CONSTRAINT "animal_watch_end_pkey" PRIMARY KEY ("site_id","watch_id")
);

CREATE TABLE "handover" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "by" TEXT NOT NULL,
    "note" TEXT,
    "shown" JSONB NOT NULL,
    "digest" BYTEA NOT NULL,

    CONSTRAINT "handover_pkey" PRIMARY KEY ("site_id","id")
);

CREATE TABLE "handover_taken" (
    "site_id" UUID NOT NULL,
    "handover_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "by" TEXT NOT NULL,
    "how" TEXT NOT NULL,
    "note" TEXT,

    CONSTRAINT "handover_taken_pkey" PRIMARY KEY ("site_id","handover_id")
);

CREATE UNIQUE INDEX "state_asked_site_id_system_id_state_since_key" ON "state_asked"("site_id", "system_id", "state", "since");
CREATE INDEX "signature_asked_site_id_at_idx" ON "signature_asked"("site_id", "at");
CREATE INDEX "site_notice_site_id_until_idx" ON "site_notice"("site_id", "until");
CREATE INDEX "animal_watch_site_id_until_idx" ON "animal_watch"("site_id", "until");
CREATE INDEX "handover_site_id_at_idx" ON "handover"("site_id", "at");

ALTER TABLE "state_timed" ADD CONSTRAINT "state_timed_site_id_system_id_fkey" FOREIGN KEY ("site_id", "system_id") REFERENCES "system"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE "state_asked" ADD CONSTRAINT "state_asked_site_id_system_id_fkey" FOREIGN KEY ("site_id", "system_id") REFERENCES "system"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE "state_answered" ADD CONSTRAINT "state_answered_site_id_asked_id_fkey" FOREIGN KEY ("site_id", "asked_id") REFERENCES "state_asked"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE "signature_asked" ADD CONSTRAINT "signature_asked_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE "signature_asked" ADD CONSTRAINT "signature_asked_site_id_system_id_fkey" FOREIGN KEY ("site_id", "system_id") REFERENCES "system"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE "signature_given" ADD CONSTRAINT "signature_given_site_id_asked_id_fkey" FOREIGN KEY ("site_id", "asked_id") REFERENCES "signature_asked"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE "site_notice" ADD CONSTRAINT "site_notice_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE "site_notice_end" ADD CONSTRAINT "site_notice_end_site_id_notice_id_fkey" FOREIGN KEY ("site_id", "notice_id") REFERENCES "site_notice"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE "animal_watch" ADD CONSTRAINT "animal_watch_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE "animal_watch" ADD CONSTRAINT "animal_watch_site_id_system_id_fkey" FOREIGN KEY ("site_id", "system_id") REFERENCES "system"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE "animal_watch_end" ADD CONSTRAINT "animal_watch_end_site_id_watch_id_fkey" FOREIGN KEY ("site_id", "watch_id") REFERENCES "animal_watch"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE "handover" ADD CONSTRAINT "handover_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE "handover_taken" ADD CONSTRAINT "handover_taken_site_id_handover_id_fkey" FOREIGN KEY ("site_id", "handover_id") REFERENCES "handover"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- What Prisma has no word for.
ALTER TABLE "state_event" DROP CONSTRAINT "state_event_kind_known";
ALTER TABLE "state_event"
  ADD CONSTRAINT "state_event_kind_known" CHECK ("kind" IN ('begun', 'put-off', 'ended', 'looked', 'authorised'));
ALTER TABLE "state_asked" ADD CONSTRAINT "state_asked_why_known" CHECK ("why" IN ('watts', 'clock'));
ALTER TABLE "state_answered" ADD CONSTRAINT "state_answered_run" CHECK ("is_so" = ("run_id" IS NOT NULL));
ALTER TABLE "signature_asked" ADD CONSTRAINT "signature_asked_kind_known"
  CHECK ("kind" IN ('ozone-return', 'water-release', 'medicine-dosing', 'valve-line-up', 'safeguard-off'));
ALTER TABLE "site_notice" ADD CONSTRAINT "site_notice_ends" CHECK ("until" > "from");
ALTER TABLE "animal_watch" ADD CONSTRAINT "animal_watch_ends" CHECK ("until" > "at");
ALTER TABLE "handover_taken" ADD CONSTRAINT "handover_taken_how_known" CHECK ("how" IN ('session', 'password'));

-- Two signatures are those of two.
CREATE FUNCTION "refuse_own_second"() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
  first TEXT;
BEGIN
  IF TG_TABLE_NAME = 'signature_given' THEN
    SELECT a."by" INTO first FROM "signature_asked" a WHERE a."site_id" = NEW."site_id" AND a."id" = NEW."asked_id";
  ELSE
    SELECT h."by" INTO first FROM "handover" h WHERE h."site_id" = NEW."site_id" AND h."id" = NEW."handover_id";
  END IF;
  IF first = NEW."by" THEN
    RAISE EXCEPTION 'A second signature is that of somebody else';
  END IF;
  RETURN NEW;
END
$$;
CREATE TRIGGER "of_two" BEFORE INSERT ON "signature_given" FOR EACH ROW EXECUTE FUNCTION "refuse_own_second"();
CREATE TRIGGER "of_two" BEFORE INSERT ON "handover_taken" FOR EACH ROW EXECUTE FUNCTION "refuse_own_second"();

CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "state_asked" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "never_emptied" BEFORE TRUNCATE ON "state_asked" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "state_answered" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "never_emptied" BEFORE TRUNCATE ON "state_answered" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "signature_asked" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "never_emptied" BEFORE TRUNCATE ON "signature_asked" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "signature_given" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "never_emptied" BEFORE TRUNCATE ON "signature_given" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "site_notice" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "never_emptied" BEFORE TRUNCATE ON "site_notice" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "site_notice_end" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "never_emptied" BEFORE TRUNCATE ON "site_notice_end" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "animal_watch" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "never_emptied" BEFORE TRUNCATE ON "animal_watch" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "animal_watch_end" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "never_emptied" BEFORE TRUNCATE ON "animal_watch_end" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "handover" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "never_emptied" BEFORE TRUNCATE ON "handover" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "handover_taken" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "never_emptied" BEFORE TRUNCATE ON "handover_taken" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
