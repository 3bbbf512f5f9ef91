-- AlterTable: a call is of an alarm or of a test, and goes by one of several channels.
ALTER TABLE "alarm_call" ALTER COLUMN "occurrence_id" DROP NOT NULL,
ADD COLUMN     "test_id" UUID;

-- AlterTable: when its people were last measured, so that whoever reads a site knows without asking.
ALTER TABLE "site" ADD COLUMN     "measured_at" TIMESTAMPTZ(3);

-- CreateTable
CREATE TABLE "push_key" (
    "id" INTEGER NOT NULL,
    "public_key" TEXT NOT NULL,
    "private_key" TEXT NOT NULL,
    "made_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "push_key_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "push_device" (
    "id" UUID NOT NULL,
    "account_id" UUID NOT NULL,
    "endpoint" TEXT NOT NULL,
    "p256dh" TEXT NOT NULL,
    "auth" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "made_at" TIMESTAMPTZ(3) NOT NULL,
    "taken_at" TIMESTAMPTZ(3),

    CONSTRAINT "push_device_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "path_sighting" (
    "path" TEXT NOT NULL,
    "checked_at" TIMESTAMPTZ(3) NOT NULL,
    "is_up" BOOLEAN NOT NULL,
    "up_at" TIMESTAMPTZ(3),
    "detail" TEXT,

    CONSTRAINT "path_sighting_pkey" PRIMARY KEY ("path")
);

-- CreateTable
CREATE TABLE "call_webhook" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "url" TEXT NOT NULL,
    "secret" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "created_by" TEXT NOT NULL,
    "ended_at" TIMESTAMPTZ(3),

    CONSTRAINT "call_webhook_pkey" PRIMARY KEY ("site_id","id")
);

-- CreateTable
CREATE TABLE "test_call" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "account_id" UUID NOT NULL,
    "made_at" TIMESTAMPTZ(3) NOT NULL,
    "made_by" TEXT,

    CONSTRAINT "test_call_pkey" PRIMARY KEY ("site_id","id")
);

-- CreateTable
CREATE TABLE "test_call_answer" (
    "site_id" UUID NOT NULL,
    "test_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "channel" TEXT,
    "from" TEXT,

    CONSTRAINT "test_call_answer_pkey" PRIMARY KEY ("site_id","test_id")
);

-- CreateTable
CREATE TABLE "people_measured" (
    "site_id" UUID NOT NULL,
    "measured_at" TIMESTAMPTZ(3) NOT NULL,
    "facts" JSONB NOT NULL,

    CONSTRAINT "people_measured_pkey" PRIMARY KEY ("site_id")
);

-- CreateIndex
CREATE UNIQUE INDEX "push_device_endpoint_key" ON "push_device"("endpoint");

-- CreateIndex
CREATE INDEX "push_device_account_id_idx" ON "push_device"("account_id");

-- CreateIndex
CREATE INDEX "test_call_site_id_account_id_made_at_idx" ON "test_call"("site_id", "account_id", "made_at");

-- CreateIndex
CREATE UNIQUE INDEX "alarm_call_site_id_test_id_account_id_channel_key" ON "alarm_call"("site_id", "test_id", "account_id", "channel");

-- AddForeignKey
ALTER TABLE "push_device" ADD CONSTRAINT "push_device_account_id_fkey" FOREIGN KEY ("account_id") REFERENCES "account"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "call_webhook" ADD CONSTRAINT "call_webhook_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "test_call" ADD CONSTRAINT "test_call_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "test_call_answer" ADD CONSTRAINT "test_call_answer_site_id_test_id_fkey" FOREIGN KEY ("site_id", "test_id") REFERENCES "test_call"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "people_measured" ADD CONSTRAINT "people_measured_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "alarm_call" ADD CONSTRAINT "alarm_call_site_id_test_id_fkey" FOREIGN KEY ("site_id", "test_id") REFERENCES "test_call"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- What Prisma has no word for.
ALTER TABLE "alarm_call" DROP CONSTRAINT "alarm_call_channel_known";
ALTER TABLE "alarm_call"
  ADD CONSTRAINT "alarm_call_channel_known" CHECK ("channel" IN ('mail', 'push', 'webhook')),
  ADD CONSTRAINT "alarm_call_of_one" CHECK (num_nonnulls("occurrence_id", "test_id") = 1);
ALTER TABLE "push_key" ADD CONSTRAINT "push_key_one" CHECK ("id" = 1);
ALTER TABLE "test_call_answer"
  ADD CONSTRAINT "test_call_answer_channel_known" CHECK ("channel" IN ('mail', 'push', 'webhook'));
-- A site is called by one webhook at a time.
CREATE UNIQUE INDEX "call_webhook_one" ON "call_webhook" ("site_id") WHERE "ended_at" IS NULL;

CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "test_call" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "never_emptied" BEFORE TRUNCATE ON "test_call" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "test_call_answer" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "never_emptied" BEFORE TRUNCATE ON "test_call_answer" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
