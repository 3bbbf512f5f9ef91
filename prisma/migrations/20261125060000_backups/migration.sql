-- CreateTable
CREATE TABLE "backup_run" (
    "id" UUID NOT NULL,
    "began_at" TIMESTAMPTZ(3) NOT NULL,
    "ended_at" TIMESTAMPTZ(3) NOT NULL,
    "machine" TEXT NOT NULL,
    "path" TEXT,
    "bytes" BIGINT,
    "problem" TEXT,

    CONSTRAINT "backup_run_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "disk_sighting" (
    "machine" TEXT NOT NULL,
    "folder" TEXT NOT NULL,
    "holds" TEXT NOT NULL,
    "free_bytes" BIGINT NOT NULL,
    "total_bytes" BIGINT NOT NULL,
    "seen_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "disk_sighting_pkey" PRIMARY KEY ("machine","folder")
);

-- CreateTable
CREATE TABLE "notice_sent" (
    "notice" TEXT NOT NULL,
    "sent_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "notice_sent_pkey" PRIMARY KEY ("notice")
);

-- CreateIndex
CREATE INDEX "backup_run_ended_at_idx" ON "backup_run"("ended_at");


-- By hand from here on. ---------------------------------------------------------------------------------------------------

-- A backup is there, whole, or there is a reason why not.
ALTER TABLE "backup_run"
  ADD CONSTRAINT "backup_run_done_or_not"
    CHECK (("problem" IS NULL) = ("path" IS NOT NULL) AND ("path" IS NULL) = ("bytes" IS NULL));
ALTER TABLE "disk_sighting" ADD CONSTRAINT "disk_sighting_holds_known" CHECK ("holds" IN ('data', 'backups'));
