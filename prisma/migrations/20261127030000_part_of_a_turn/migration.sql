-- A swap may be of a part of a turn: it has the two ends of that part then.
ALTER TABLE "rota_change" DROP CONSTRAINT "rota_change_kind_known";
ALTER TABLE "rota_change" ADD CONSTRAINT "rota_change_kind_known" CHECK (
  ("kind" = 'leave' AND "from_at" < "to_at" AND num_nonnulls("from_at", "to_at") = 2
    AND num_nonnulls("takes_id", "shift_id", "shift_date", "back_shift_id", "back_date") = 0)
  OR ("kind" = 'swap' AND (num_nonnulls("from_at", "to_at") = 0 OR (num_nonnulls("from_at", "to_at") = 2 AND "from_at" < "to_at"))
    AND num_nonnulls("takes_id", "shift_id", "shift_date") = 3
    AND "takes_id" <> "person_id" AND num_nonnulls("back_shift_id", "back_date") IN (0, 2)));
