-- The longer look at each system, and how far the job that computes it is.
CREATE TABLE "review_study" (
    "site_id" UUID NOT NULL,
    "system_id" UUID NOT NULL,
    "input_hash" TEXT NOT NULL,
    "engine_version" TEXT NOT NULL,
    "judged_on" DATE NOT NULL,
    "body" JSONB,
    "computed_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "review_study_pkey" PRIMARY KEY ("site_id","system_id")
);

CREATE TABLE "study_run" (
    "site_id" UUID NOT NULL,
    "run_id" UUID NOT NULL,
    "system_key" TEXT,
    "parts_done" INTEGER NOT NULL,
    "parts_all" INTEGER NOT NULL,
    "beat_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "study_run_pkey" PRIMARY KEY ("site_id")
);

ALTER TABLE "review_study" ADD CONSTRAINT "review_study_site_id_system_id_fkey" FOREIGN KEY ("site_id", "system_id") REFERENCES "system"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

ALTER TABLE "study_run" ADD CONSTRAINT "study_run_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;
