-- What a line of the sheet held on the rounds before is asked for every line of a round that is walked.
CREATE INDEX "round_entry_site_id_check_key_at_idx" ON "round_entry"("site_id", "check_key", "at");
