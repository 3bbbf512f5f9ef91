-- The end of a watch of animals is taken back with a reason, as looks are.
ALTER TABLE "taken_back" DROP CONSTRAINT "taken_back_what_known";
ALTER TABLE "taken_back" ADD CONSTRAINT "taken_back_what_known"
  CHECK ("what" IN ('second-look', 'state-look', 'second-signature', 'animal-watch-end'));
