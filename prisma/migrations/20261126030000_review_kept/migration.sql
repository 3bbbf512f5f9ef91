-- Every review of a system that says something else than the one before, kept for good.
CREATE TABLE "review_kept" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "system_id" UUID NOT NULL,
    "computed_at" TIMESTAMPTZ(3) NOT NULL,
    "judged_on" DATE NOT NULL,
    "input_hash" TEXT NOT NULL,
    "engine_version" TEXT NOT NULL,
    "content_hash" BYTEA NOT NULL,
    "summary" JSONB NOT NULL,
    "body" BYTEA NOT NULL,

    CONSTRAINT "review_kept_pkey" PRIMARY KEY ("site_id","id")
);

CREATE INDEX "review_kept_site_id_system_id_computed_at_idx" ON "review_kept"("site_id", "system_id", "computed_at");

ALTER TABLE "review_kept" ADD CONSTRAINT "review_kept_site_id_system_id_fkey" FOREIGN KEY ("site_id", "system_id") REFERENCES "system"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "review_kept" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "never_emptied" BEFORE TRUNCATE ON "review_kept" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
