-- The kinds of entry of an incident are known.
ALTER TABLE "incident_entry"
  ADD CONSTRAINT "incident_entry_kind_known" CHECK (
    "kind" IN ('step', 'sample', 'measurement', 'log', 'mark', 'loss', 'safeguard', 'cause', 'action', 'action-done',
               'summary', 'signature')),
  ADD CONSTRAINT "incident_entry_body_is_an_object" CHECK (jsonb_typeof("body") = 'object');
