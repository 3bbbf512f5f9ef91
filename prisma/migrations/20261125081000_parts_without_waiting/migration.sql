-- A part is made beside the readings and then joined to them: creating it as a part at once would hold up everybody who
-- stores a reading until it is there, and whoever has stored one already would wait for themselves.
CREATE OR REPLACE FUNCTION "make_reading_part"("day" date) RETURNS text LANGUAGE plpgsql SECURITY DEFINER
  SET search_path = pg_catalog, pg_temp AS $$
DECLARE
  first date := date_trunc('month', "day"::timestamp)::date;
  part text := 'reading_' || to_char(first, 'YYYY_MM');
BEGIN
  IF "day" < DATE '1990-01-01' OR "day" > (now() AT TIME ZONE 'UTC')::date + 400 THEN
    RAISE EXCEPTION 'no part of the readings for %', "day" USING ERRCODE = 'datetime_field_overflow';
  END IF;
  IF EXISTS (SELECT FROM pg_class WHERE relnamespace = 'reading_parts'::regnamespace AND relname = part) THEN RETURN part; END IF;
  -- Two at once: the second waits here and finds it made. It asks the table, for what it remembers of names is of before.
  PERFORM pg_advisory_xact_lock(hashtext('reading_parts'));
  IF EXISTS (SELECT FROM pg_class WHERE relnamespace = 'reading_parts'::regnamespace AND relname = part) THEN RETURN part; END IF;
  EXECUTE format('CREATE TABLE reading_parts.%I (LIKE public.reading INCLUDING ALL)', part);
  EXECUTE format(
    'ALTER TABLE public.reading ATTACH PARTITION reading_parts.%I FOR VALUES FROM (%L) TO (%L)', part,
    to_char(first, 'YYYY-MM-DD') || ' 00:00:00+00', to_char(first + interval '1 month', 'YYYY-MM-DD') || ' 00:00:00+00');
  RETURN part;
END;
$$;
