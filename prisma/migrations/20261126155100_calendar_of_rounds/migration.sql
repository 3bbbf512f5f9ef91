-- A calendar may read when rounds are due as well.
ALTER TABLE "calendar_feed" DROP CONSTRAINT "calendar_feed_scope_known";
ALTER TABLE "calendar_feed" ADD CONSTRAINT "calendar_feed_scope_known" CHECK ("scope" IN ('mine', 'everybody', 'rounds'));
