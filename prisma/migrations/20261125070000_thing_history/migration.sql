-- The history of a thing is read from the record by its id. By hand: Prisma has no word for an index over an expression, and
-- leaves one that holds some rows only alone.
CREATE INDEX "record_of_thing" ON "record"("site_id", (coalesce("body"->>'thing', "body"->>'equipment', "body"->>'safeguard')))
  WHERE coalesce("body"->>'thing', "body"->>'equipment', "body"->>'safeguard') IS NOT NULL;
CREATE INDEX "record_of_former" ON "record"("site_id", ("body"->>'former')) WHERE "body"->>'former' IS NOT NULL;
CREATE INDEX "record_of_imports" ON "record"("site_id") WHERE "kind" = 'facility-imported';
