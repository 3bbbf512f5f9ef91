-- What Holdfast signs calls with is sealed: neither the database nor a backup can tell it. What stands here as it was is sealed by
-- the worker when it starts, which alone has the key.
ALTER TABLE "call_webhook" ALTER COLUMN "secret" DROP NOT NULL;
ALTER TABLE "call_webhook" ADD COLUMN "secret_sealed" BYTEA;
ALTER TABLE "call_webhook" ADD CONSTRAINT "call_webhook_one_secret" CHECK (num_nonnulls("secret", "secret_sealed") = 1);
ALTER TABLE "push_key" ALTER COLUMN "private_key" DROP NOT NULL;
ALTER TABLE "push_key" ADD COLUMN "private_key_sealed" BYTEA;
ALTER TABLE "push_key" ADD CONSTRAINT "push_key_one_key" CHECK (num_nonnulls("private_key", "private_key_sealed") = 1);
