import 'server-only';
import { HOLD_MS } from '#core/readings/roll-up';
import { pool } from '../pool';
import { arrayText, type Asking } from './asking';
import type { Due } from './due';
import { isReadSql, lateSql } from './late-sql';

const HOLD = `interval '${HOLD_MS} milliseconds'`;
/** ms of an interval, whole as the instants are. */
const LASTS = (interval: string) => `round(date_part('epoch', ${interval}) * 1000)`;
const MS = (instant: string) => `(extract(epoch FROM ${instant}) * 1000)::float8`;

// Of what was corrected, the correction; from before the stretch what may still hold in it. A reading holds until the next of
// its sensor, also a bad one, which says that nothing is known. Those by hand are counted and hold nothing.
const HELD = `
  asked AS MATERIALIZED (
    SELECT sensor_id, is_day, to_timestamp(from_ms / 1000.0) AS from_at, to_timestamp(to_ms / 1000.0) AS to_at,
           ${isReadSql('a.sensor_id')} AS is_read
      FROM unnest($2::uuid[], $3::bool[], $4::float8[], $5::float8[]) AS a(sensor_id, is_day, from_ms, to_ms)),
  standing AS (
    SELECT a.*, r."at", r.origin, r.value, r.quality, r.origin = 3 AS by_hand, ${lateSql('r.', 'a.is_read')} AS is_late
      FROM asked a CROSS JOIN LATERAL (
        SELECT DISTINCT ON ("at", origin) "at", origin, value, quality, revision, received_at FROM reading
         WHERE site_id = $1::uuid AND sensor_id = a.sensor_id AND "at" >= a.from_at - ${HOLD} AND "at" < a.to_at
         ORDER BY "at", origin, revision DESC) r),
  held AS (
    SELECT *, greatest("at", from_at) AS begins,
           least(lead("at") OVER (PARTITION BY sensor_id, is_day, from_at, by_hand ORDER BY "at", origin),
                 "at" + ${HOLD}, to_at) AS ends
      FROM standing),
  limits AS MATERIALIZED (
    SELECT sensor_id, since, lead(since) OVER (PARTITION BY sensor_id ORDER BY since) AS until, above, below
      FROM reading_limit WHERE site_id = $1::uuid AND sensor_id = ANY($2::uuid[])),
  timed AS MATERIALIZED (
    SELECT h.*, CASE WHEN by_hand OR quality = 2 THEN 0 ELSE greatest(0, ${LASTS('ends - begins')}) END AS ms,
           CASE WHEN by_hand OR quality = 2 THEN 0 ELSE (
             SELECT coalesce(sum(greatest(0, ${LASTS('least(h.ends, l.until) - greatest(h.begins, l.since)')})), 0)
               FROM limits l WHERE l.sensor_id = h.sensor_id AND (h.value > l.above OR h.value < l.below)
                AND l.since < h.ends AND (l.until IS NULL OR l.until > h.begins)) END AS outside_ms
      FROM held h)`;

const OF = (name: string, quality: number) => `
  count(*) FILTER (WHERE is_in AND quality = ${quality})::int AS ${name}_count,
  coalesce(sum(value ORDER BY "at", origin) FILTER (WHERE is_in AND quality = ${quality}), 0) AS ${name}_sum,
  min(value) FILTER (WHERE is_in AND quality = ${quality}) AS ${name}_min,
  max(value) FILTER (WHERE is_in AND quality = ${quality}) AS ${name}_max,
  coalesce(sum(ms) FILTER (WHERE quality = ${quality}), 0) / 1000 AS ${name}_s,
  coalesce(sum(outside_ms) FILTER (WHERE quality = ${quality}), 0) / 1000 AS ${name}_outside_s`;
const ROLLED = `
  WITH ${HELD}
  SELECT sensor_id, is_day, from_at, by_hand, to_at, ${OF('good', 0)}, ${OF('suspect', 1)},
         count(*) FILTER (WHERE is_in AND quality = 2)::int AS bad_count,
         count(*) FILTER (WHERE is_in AND is_late)::int AS late_count
    FROM (SELECT *, "at" >= from_at AS is_in FROM timed) t
   GROUP BY sensor_id, is_day, from_at, by_hand, to_at
  HAVING bool_or(is_in) OR sum(ms) > 0`;

const FIGURES = [
  'to_at',
  ...['good', 'suspect'].flatMap((name) =>
    ['count', 'sum', 'min', 'max', 's', 'outside_s'].map((one) => `${name}_${one}`),
  ),
  'bad_count',
  'late_count',
];
const KEEP = `
  INSERT INTO reading_roll_up (site_id, sensor_id, is_day, from_at, by_hand, ${FIGURES.join(', ')})
  SELECT $1::uuid, sensor_id, is_day, from_at, by_hand, ${FIGURES.join(', ')} FROM (${ROLLED}) r
   ORDER BY 2, 3, 4, 5`;

// What was rolled up of an hour goes too when nothing is left in it: a late reading may end what held into it.
const FORGET = `
  DELETE FROM reading_roll_up r USING unnest($2::uuid[], $3::bool[], $4::float8[]) AS a(sensor_id, is_day, from_ms)
   WHERE r.site_id = $1::uuid AND r.sensor_id = a.sensor_id AND r.is_day = a.is_day
     AND r.from_at = to_timestamp(a.from_ms / 1000.0)`;

/** What an hour or a day of a sensor came to. Figures are in the facility file's unit, times in s. */
export interface RollUp {
  fromMs: number;
  toMs: number;
  byHand: boolean;
  good: Figures;
  suspect: Figures;
  badCount: number;
  /** How many of all these came late; null where that was not counted yet when it was rolled up. */
  lateCount: number | null;
}

/** What readings of one quality came to; `low` and `high` are null where there are none. */
export interface Figures {
  count: number;
  sum: number;
  low: number | null;
  high: number | null;
  /** s for which one of them held, and of these outside the limits that alarms then had. */
  heldS: number;
  outsideS: number;
}

function askedFor(siteId: string, due: readonly Due[]): string[] {
  return [
    siteId,
    arrayText(due.map(({ sensorId }) => sensorId)),
    arrayText(due.map(({ isDay }) => String(isDay))),
    arrayText(due.map(({ fromMs }) => fromMs)),
    arrayText(due.map(({ toMs }) => toMs)),
  ];
}

/** Works hours and days of a site out from its readings, and keeps them in place of what was there. */
export async function rollUp(asking: Asking, siteId: string, due: readonly Due[]): Promise<void> {
  if (due.length === 0) return;
  const asked = askedFor(siteId, due);
  await asking(FORGET, asked.slice(0, -1));
  await asking(KEEP, asked);
}

const READ = (from: string) => `
  SELECT ${MS('from_at')} AS "fromMs", ${MS('to_at')} AS "toMs", by_hand AS "byHand",
         json_build_object('count', good_count, 'sum', good_sum, 'low', good_min, 'high', good_max,
                           'heldS', good_s, 'outsideS', good_outside_s) AS good,
         json_build_object('count', suspect_count, 'sum', suspect_sum, 'low', suspect_min, 'high', suspect_max,
                           'heldS', suspect_s, 'outsideS', suspect_outside_s) AS suspect,
         bad_count AS "badCount", late_count AS "lateCount" FROM ${from}`;

/** The hours or days of a sensor that are rolled up and begin within a span, in order. */
export async function rolledUp(
  siteId: string,
  sensorId: string,
  { from, to, isDay }: { from: Date; to: Date; isDay: boolean },
): Promise<RollUp[]> {
  const { rows } = await pool().query<RollUp>(
    `${READ('reading_roll_up')} WHERE site_id = $1 AND sensor_id = $2 AND is_day = $3 AND from_at >= $4 AND from_at < $5
      ORDER BY from_at, by_hand`,
    [siteId, sensorId, isDay, from, to],
  );
  return rows;
}

/** What hours and days of a site come to as the readings stand now; nothing is kept. */
export async function workedOut(siteId: string, due: readonly Due[]): Promise<RollUp[]> {
  if (due.length === 0) return [];
  const { rows } = await pool().query<RollUp>(
    `${READ(`(${ROLLED}) r`)} ORDER BY from_at, by_hand`,
    askedFor(siteId, due),
  );
  return rows;
}
