-- CreateTable: somebody's leave, or a turn that one gives and another takes, as it was asked for.
CREATE TABLE "rota_change" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "person_id" UUID NOT NULL,
    "from_at" TIMESTAMPTZ(3),
    "to_at" TIMESTAMPTZ(3),
    "takes_id" UUID,
    "shift_id" UUID,
    "shift_date" TEXT,
    "back_shift_id" UUID,
    "back_date" TEXT,
    "why" TEXT,
    "asked_by" TEXT NOT NULL,
    "asked_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "rota_change_pkey" PRIMARY KEY ("site_id","id")
);

-- CreateTable: what came of it.
CREATE TABLE "rota_change_event" (
    "site_id" UUID NOT NULL,
    "change_id" UUID NOT NULL,
    "number" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "by" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "why" TEXT,

    CONSTRAINT "rota_change_event_pkey" PRIMARY KEY ("site_id","change_id","number")
);

-- CreateIndex
CREATE INDEX "rota_change_site_id_asked_at_idx" ON "rota_change"("site_id", "asked_at");

-- AddForeignKey
ALTER TABLE "rota_change" ADD CONSTRAINT "rota_change_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "rota_change" ADD CONSTRAINT "rota_change_site_id_person_id_fkey" FOREIGN KEY ("site_id", "person_id") REFERENCES "person"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "rota_change" ADD CONSTRAINT "rota_change_site_id_takes_id_fkey" FOREIGN KEY ("site_id", "takes_id") REFERENCES "person"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "rota_change" ADD CONSTRAINT "rota_change_site_id_shift_id_fkey" FOREIGN KEY ("site_id", "shift_id") REFERENCES "shift"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "rota_change" ADD CONSTRAINT "rota_change_site_id_back_shift_id_fkey" FOREIGN KEY ("site_id", "back_shift_id") REFERENCES "shift"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "rota_change_event" ADD CONSTRAINT "rota_change_event_site_id_change_id_fkey" FOREIGN KEY ("site_id", "change_id") REFERENCES "rota_change"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- A leave has its two ends and nothing of a swap; a swap names who takes which turn, and perhaps a turn in return.
ALTER TABLE "rota_change" ADD CONSTRAINT "rota_change_kind_known" CHECK (
  ("kind" = 'leave' AND "from_at" < "to_at" AND num_nonnulls("from_at", "to_at") = 2
    AND num_nonnulls("takes_id", "shift_id", "shift_date", "back_shift_id", "back_date") = 0)
  OR ("kind" = 'swap' AND num_nonnulls("from_at", "to_at") = 0 AND num_nonnulls("takes_id", "shift_id", "shift_date") = 3
    AND "takes_id" <> "person_id" AND num_nonnulls("back_shift_id", "back_date") IN (0, 2)));

ALTER TABLE "rota_change_event" ADD CONSTRAINT "rota_change_event_kind_known" CHECK (
  "number" > 0 AND "kind" IN ('agreed', 'declined', 'approved', 'refused', 'withdrawn', 'taken-back'));

-- Each thing becomes of a change once.
CREATE UNIQUE INDEX "rota_change_event_once" ON "rota_change_event"("site_id", "change_id", "kind");

-- What was asked and what came of it is added and never changed.
CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "rota_change" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "never_emptied" BEFORE TRUNCATE ON "rota_change" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "rota_change_event" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "never_emptied" BEFORE TRUNCATE ON "rota_change_event" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
