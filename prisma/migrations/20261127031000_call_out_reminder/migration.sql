-- Whoever went in alone is reminded before their time is over: nobody does that, as nobody calls others when it is.
ALTER TABLE "call_out_event" DROP CONSTRAINT "call_out_event_kind_known", DROP CONSTRAINT "call_out_event_by_person";
ALTER TABLE "call_out_event"
  ADD CONSTRAINT "call_out_event_kind_known" CHECK ("kind" IN ('extended', 'reminded', 'overdue', 'seen-to', 'back')),
  -- Nobody but a person says that somebody is back, or takes more time.
  ADD CONSTRAINT "call_out_event_by_person" CHECK (("by" IS NULL) = ("kind" IN ('reminded', 'overdue')));
