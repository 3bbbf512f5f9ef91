-- A round that its sheet asks two to sign: the second is somebody else than whoever signed first, and signs once.
ALTER TABLE "round_signature" DROP CONSTRAINT "round_signature_kind_known";
ALTER TABLE "round_signature" ADD CONSTRAINT "round_signature_kind_known" CHECK ("kind" IN ('signed', 'second', 'second-look'));
CREATE UNIQUE INDEX "round_signature_second_once" ON "round_signature" ("site_id", "round_id") WHERE "kind" = 'second';
-- Whoever signed first is not the second.
CREATE UNIQUE INDEX "round_signature_by_two" ON "round_signature" ("site_id", "round_id", "by") WHERE "kind" IN ('signed', 'second');
