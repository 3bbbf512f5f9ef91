-- What somebody said they looked at, and takes back with a reason: it stays, and counts no longer.
CREATE TABLE "taken_back" (
    "site_id" UUID NOT NULL,
    "what" TEXT NOT NULL,
    "about" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "by" TEXT NOT NULL,
    "reason" TEXT NOT NULL,

    CONSTRAINT "taken_back_pkey" PRIMARY KEY ("site_id","what","about")
);
ALTER TABLE "taken_back" ADD CONSTRAINT "taken_back_site_id_fkey" FOREIGN KEY ("site_id") REFERENCES "site"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE "taken_back" ADD CONSTRAINT "taken_back_what_known" CHECK ("what" IN ('second-look', 'state-look', 'second-signature'));
ALTER TABLE "taken_back" ADD CONSTRAINT "taken_back_says_why" CHECK (btrim("reason") <> '');
CREATE TRIGGER "only_added" BEFORE UPDATE OR DELETE ON "taken_back" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "never_emptied" BEFORE TRUNCATE ON "taken_back" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();

-- Whoever took a second look back may look again: what is held is the round, while one is added.
DROP INDEX "round_signature_site_id_round_id_kind_by_key";
CREATE INDEX "round_signature_site_id_round_id_idx" ON "round_signature"("site_id", "round_id");
