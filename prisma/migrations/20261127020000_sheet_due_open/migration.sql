-- What can still be made good, and what was missed of late, is asked for on every list and by the worker each minute.
CREATE INDEX "sheet_due_site_id_closes_at_idx" ON "sheet_due"("site_id", "closes_at");
