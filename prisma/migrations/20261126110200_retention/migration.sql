-- Readings of a month are retired by its whole part, which sites share: only when every site that has any in it lets them go,
-- all hours and days of it are rolled up, and the months before it are gone. What an incident cites stays, and so do the last
-- 27 hours, so that a day across the edge, and what held into it, is whole. The processes may ask for it and for nothing else.
CREATE FUNCTION "retire_reading_part"("day" date) RETURNS text LANGUAGE plpgsql SECURITY DEFINER
  SET search_path = pg_catalog, pg_temp AS $$
DECLARE
  first date := date_trunc('month', "day"::timestamp)::date;
  begins timestamptz := first::timestamp AT TIME ZONE 'UTC';
  ends timestamptz := (first + interval '1 month')::timestamp AT TIME ZONE 'UTC';
  part text := 'reading_' || to_char(first, 'YYYY_MM');
  fresh text := part || '_kept';
BEGIN
  IF ends > now() - interval '3 months' THEN RETURN 'too-new'; END IF;
  IF EXISTS (SELECT FROM public.reading_retired WHERE "month" = first) THEN RETURN 'retired-before'; END IF;
  IF NOT EXISTS (SELECT FROM pg_class WHERE relnamespace = 'reading_parts'::regnamespace AND relname = part) THEN
    RETURN 'no-part';
  END IF;
  PERFORM pg_advisory_xact_lock(hashtext('reading_parts'));
  IF EXISTS (SELECT FROM pg_class c WHERE c.relnamespace = 'reading_parts'::regnamespace AND c.relkind = 'r' AND c.relname < part
                AND to_date(c.relname, '"reading_"YYYY_MM') NOT IN (SELECT "month" FROM public.reading_retired)) THEN
    RETURN 'older-kept';
  END IF;
  IF EXISTS (SELECT FROM public.site s
              WHERE coalesce((now() - make_interval(months => (s.detail->>'keepReadingsMonths')::int)) < ends, true)
                AND EXISTS (SELECT FROM public.reading r WHERE r.site_id = s.id AND r."at" >= begins AND r."at" < ends)) THEN
    RETURN 'wanted';
  END IF;
  -- Whoever stores into it from here on waits, and is told afterwards that it is gone.
  EXECUTE format('LOCK TABLE reading_parts.%I IN SHARE ROW EXCLUSIVE MODE', part);
  IF EXISTS (SELECT FROM public.reading_due WHERE from_at < ends AND to_at > begins)
     OR EXISTS (SELECT FROM public.reading_touched t, unnest(t.froms, t.tos) AS u(a, b) WHERE u.a < ends AND u.b >= begins)
     OR EXISTS (
       SELECT FROM (SELECT DISTINCT site_id, sensor_id, date_trunc('hour', "at", 'UTC') AS hour FROM public.reading
                     WHERE "at" >= begins AND "at" < ends) r
        WHERE NOT EXISTS (SELECT FROM public.reading_roll_up u WHERE u.site_id = r.site_id AND u.sensor_id = r.sensor_id
                             AND NOT u.is_day AND u.from_at = r.hour)
           OR NOT EXISTS (SELECT FROM public.reading_roll_up u WHERE u.site_id = r.site_id AND u.sensor_id = r.sensor_id
                             AND u.is_day AND u.from_at <= r.hour + interval '59 minutes' AND u.to_at > r.hour)) THEN
    RETURN 'not-rolled-up';
  END IF;
  EXECUTE format('CREATE TABLE reading_parts.%I (LIKE public.reading INCLUDING ALL)', fresh);
  EXECUTE format(
    'INSERT INTO reading_parts.%I
     SELECT r.* FROM reading_parts.%I r
      WHERE r."at" >= $1 - interval ''27 hours'' OR EXISTS (
        SELECT FROM public.incident i LEFT JOIN public.alarm_occurrence o ON o.site_id = i.site_id AND o.id = i.occurrence_id
         CROSS JOIN LATERAL (
           SELECT least(min(e."at"), i.opened_at, o.began_at) - interval ''3 days'' AS cited_from,
                  greatest(max(e."at"), i.opened_at) + interval ''3 days'' AS cited_to
             FROM public.incident_entry e WHERE e.site_id = i.site_id AND e.incident_id = i.id) c
         WHERE i.site_id = r.site_id AND r."at" >= c.cited_from AND r."at" <= c.cited_to)', fresh, part) USING ends;
  EXECUTE format('ALTER TABLE public.reading DETACH PARTITION reading_parts.%I', part);
  EXECUTE format('DROP TABLE reading_parts.%I', part);
  EXECUTE format('ALTER TABLE reading_parts.%I RENAME TO %I', fresh, part);
  EXECUTE format(
    'ALTER TABLE public.reading ATTACH PARTITION reading_parts.%I FOR VALUES FROM (%L) TO (%L)', part,
    to_char(first, 'YYYY-MM-DD') || ' 00:00:00+00', to_char(first + interval '1 month', 'YYYY-MM-DD') || ' 00:00:00+00');
  INSERT INTO public.reading_retired VALUES (first, now());
  RETURN 'retired';
END;
$$;
