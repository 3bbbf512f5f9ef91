-- Round sheets that a site keeps, with their versions, the drafts of them, and the days on which they are due.
CREATE TABLE "round_sheet" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "key" TEXT NOT NULL,
    "ordinal" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "detail" JSONB NOT NULL,
    "retired_at" TIMESTAMPTZ(3),

    CONSTRAINT "round_sheet_pkey" PRIMARY KEY ("site_id","id")
);

CREATE TABLE "round_sheet_version" (
    "site_id" UUID NOT NULL,
    "sheet_id" UUID NOT NULL,
    "version" INTEGER NOT NULL,
    "body" JSONB NOT NULL,
    "in_force_from" TIMESTAMPTZ(3) NOT NULL,
    "written_by" TEXT,
    "reason" TEXT,

    CONSTRAINT "round_sheet_version_pkey" PRIMARY KEY ("site_id","sheet_id","version")
);

CREATE TABLE "round_sheet_draft" (
    "site_id" UUID NOT NULL,
    "key" TEXT NOT NULL,
    "body" JSONB NOT NULL,
    "based_on" INTEGER,
    "changed_at" TIMESTAMPTZ(3) NOT NULL,
    "changed_by" TEXT NOT NULL,

    CONSTRAINT "round_sheet_draft_pkey" PRIMARY KEY ("site_id","key")
);

CREATE TABLE "sheet_due" (
    "site_id" UUID NOT NULL,
    "sheet_id" UUID NOT NULL,
    "due_at" TIMESTAMPTZ(3) NOT NULL,
    "day" TEXT NOT NULL,
    "version" INTEGER NOT NULL,
    "opens_at" TIMESTAMPTZ(3) NOT NULL,
    "late_at" TIMESTAMPTZ(3) NOT NULL,
    "closes_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "sheet_due_pkey" PRIMARY KEY ("site_id","sheet_id","due_at")
);

-- A round walks a slot of the timetable, or a sheet in one of its versions, or neither.
ALTER TABLE "round" ADD COLUMN "sheet_id" UUID,
    ADD COLUMN "sheet_version" INTEGER;

CREATE INDEX "sheet_due_site_id_due_at_idx" ON "sheet_due"("site_id", "due_at");
CREATE UNIQUE INDEX "round_site_id_sheet_id_due_at_key" ON "round"("site_id", "sheet_id", "due_at");

ALTER TABLE "round_sheet" ADD CONSTRAINT "round_sheet_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE "round_sheet_version" ADD CONSTRAINT "round_sheet_version_site_id_sheet_id_fkey" FOREIGN KEY ("site_id", "sheet_id") REFERENCES "round_sheet"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE "round_sheet_draft" ADD CONSTRAINT "round_sheet_draft_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE "sheet_due" ADD CONSTRAINT "sheet_due_site_id_sheet_id_version_fkey" FOREIGN KEY ("site_id", "sheet_id", "version") REFERENCES "round_sheet_version"("site_id", "sheet_id", "version") ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE "round" ADD CONSTRAINT "round_site_id_sheet_id_sheet_version_fkey" FOREIGN KEY ("site_id", "sheet_id", "sheet_version") REFERENCES "round_sheet_version"("site_id", "sheet_id", "version") ON DELETE RESTRICT ON UPDATE RESTRICT;

ALTER TABLE "round" ADD CONSTRAINT "round_walks_one" CHECK (("sheet_id" IS NULL) = ("sheet_version" IS NULL) AND ("sheet_id" IS NULL OR "slot_id" IS NULL));
CREATE UNIQUE INDEX "round_sheet_living_key" ON "round_sheet"("site_id", "key") WHERE "retired_at" IS NULL;

CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "round_sheet_version" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "never_emptied" BEFORE TRUNCATE ON "round_sheet_version" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
