-- AlterTable
ALTER TABLE "site" ADD COLUMN     "is_demo" BOOLEAN NOT NULL DEFAULT false;

-- AlterTable
ALTER TABLE "safeguard_test" ADD COLUMN     "expected" TEXT,
ADD COLUMN     "recorded_by" TEXT,
ADD COLUMN     "seen" TEXT,
ADD COLUMN     "steps" TEXT;

-- AlterTable
ALTER TABLE "plan_version" ADD COLUMN     "reason" TEXT,
ADD COLUMN     "written_by" TEXT;

-- AlterTable
ALTER TABLE "plan_status" ADD COLUMN     "by" TEXT,
ADD COLUMN     "reason" TEXT;

-- CreateTable
CREATE TABLE "account" (
    "id" UUID NOT NULL,
    "email" TEXT,
    "name" TEXT,
    "password_hash" TEXT,
    "everywhere" TEXT,
    "is_demo" BOOLEAN NOT NULL DEFAULT false,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "ended_at" TIMESTAMPTZ(3),

    CONSTRAINT "account_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "membership" (
    "site_id" UUID NOT NULL,
    "account_id" UUID NOT NULL,
    "role" TEXT NOT NULL,
    "person_id" UUID,
    "since" TIMESTAMPTZ(3) NOT NULL,
    "ended_at" TIMESTAMPTZ(3),

    CONSTRAINT "membership_pkey" PRIMARY KEY ("site_id","account_id")
);

-- CreateTable
CREATE TABLE "session" (
    "id" UUID NOT NULL,
    "token_hash" BYTEA NOT NULL,
    "account_id" UUID NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "seen_at" TIMESTAMPTZ(3) NOT NULL,
    "expires_at" TIMESTAMPTZ(3) NOT NULL,
    "ended_at" TIMESTAMPTZ(3),
    "way" TEXT NOT NULL,
    "browser" TEXT NOT NULL,

    CONSTRAINT "session_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "passkey" (
    "id" TEXT NOT NULL,
    "account_id" UUID NOT NULL,
    "public_key" BYTEA NOT NULL,
    "counter" BIGINT NOT NULL,
    "transports" TEXT[],
    "name" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "used_at" TIMESTAMPTZ(3),

    CONSTRAINT "passkey_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "outside_identity" (
    "issuer" TEXT NOT NULL,
    "subject" TEXT NOT NULL,
    "account_id" UUID NOT NULL,
    "linked_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "outside_identity_pkey" PRIMARY KEY ("issuer","subject")
);

-- CreateTable
CREATE TABLE "one_time_link" (
    "token_hash" BYTEA NOT NULL,
    "purpose" TEXT NOT NULL,
    "account_id" UUID,
    "made_by" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "expires_at" TIMESTAMPTZ(3) NOT NULL,
    "used_at" TIMESTAMPTZ(3),

    CONSTRAINT "one_time_link_pkey" PRIMARY KEY ("token_hash")
);

-- CreateTable
CREATE TABLE "passkey_challenge" (
    "challenge" TEXT NOT NULL,
    "account_id" UUID,
    "expires_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "passkey_challenge_pkey" PRIMARY KEY ("challenge")
);

-- CreateTable
CREATE TABLE "rate_limit" (
    "key" VARCHAR(255) NOT NULL,
    "points" INTEGER NOT NULL DEFAULT 0,
    "expire" BIGINT,

    CONSTRAINT "rate_limit_pkey" PRIMARY KEY ("key")
);

-- CreateTable
CREATE TABLE "account_event" (
    "id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "kind" TEXT NOT NULL,
    "account_id" UUID,
    "by" TEXT,
    "detail" JSONB NOT NULL,

    CONSTRAINT "account_event_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "account_email_key" ON "account"("email");

-- CreateIndex
CREATE INDEX "membership_account_id_idx" ON "membership"("account_id");

-- CreateIndex
CREATE UNIQUE INDEX "session_token_hash_key" ON "session"("token_hash");

-- CreateIndex
CREATE INDEX "session_account_id_idx" ON "session"("account_id");

-- CreateIndex
CREATE INDEX "passkey_account_id_idx" ON "passkey"("account_id");

-- CreateIndex
CREATE INDEX "one_time_link_account_id_idx" ON "one_time_link"("account_id");

-- CreateIndex
CREATE INDEX "account_event_account_id_at_idx" ON "account_event"("account_id", "at");

-- AddForeignKey
ALTER TABLE "membership" ADD CONSTRAINT "membership_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "membership" ADD CONSTRAINT "membership_site_id_person_id_fkey" FOREIGN KEY ("site_id", "person_id") REFERENCES "person"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "session" ADD CONSTRAINT "session_account_id_fkey" FOREIGN KEY ("account_id") REFERENCES "account"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "passkey" ADD CONSTRAINT "passkey_account_id_fkey" FOREIGN KEY ("account_id") REFERENCES "account"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "outside_identity" ADD CONSTRAINT "outside_identity_account_id_fkey" FOREIGN KEY ("account_id") REFERENCES "account"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "one_time_link" ADD CONSTRAINT "one_time_link_account_id_fkey" FOREIGN KEY ("account_id") REFERENCES "account"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;



-- By hand from here on. ---------------------------------------------------------------------------------------------------

ALTER TABLE "account"
  ADD CONSTRAINT "account_email_lower" CHECK ("email" = lower("email")),
  ADD CONSTRAINT "account_everywhere_known"
    CHECK ("everywhere" IN ('viewer', 'aquarist', 'lead', 'manager', 'admin'));
ALTER TABLE "membership"
  ADD CONSTRAINT "membership_role_known" CHECK ("role" IN ('viewer', 'aquarist', 'lead', 'manager', 'admin'));
ALTER TABLE "session"
  ADD CONSTRAINT "session_token_hashed" CHECK (octet_length("token_hash") = 32),
  ADD CONSTRAINT "session_way_known" CHECK ("way" IN ('password', 'passkey', 'outside'));
ALTER TABLE "one_time_link"
  ADD CONSTRAINT "one_time_link_token_hashed" CHECK (octet_length("token_hash") = 32),
  ADD CONSTRAINT "one_time_link_purpose_known" CHECK ("purpose" IN ('set-up', 'join', 'reset')),
  ADD CONSTRAINT "one_time_link_whose" CHECK (("purpose" = 'set-up') = ("account_id" IS NULL));

-- A version that was submitted and is not wanted is withdrawn: it stays, and says so.
ALTER TABLE "plan_status" DROP CONSTRAINT "plan_status_known";
ALTER TABLE "plan_status"
  ADD CONSTRAINT "plan_status_known"
    CHECK ("status" IN ('draft', 'submitted', 'in-force', 'superseded', 'withdrawn'));

CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "account_event" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "never_emptied" BEFORE TRUNCATE ON "account_event" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
