import 'server-only';
import type { Stretch } from '#core/readings/roll-up';
import { pool } from '../pool';
import { arrayText, type Asking } from './asking';

/** ms after which what is to be rolled up is late. Common practice, no source. */
const LATE_MS = 30 * 60_000;

/** An hour or a day of a sensor that is to be rolled up. */
export interface Due extends Stretch {
  sensorId: string;
}

/** The first instant of which readings are kept: the end of the newest month that was retired. */
const KEPT_FROM = `coalesce((SELECT max("month") + interval '1 month' FROM reading_retired), '-infinity')::timestamp AT TIME ZONE 'UTC'`;

// What lies before the readings that are kept stays as it was rolled up. Of the last day of what was retired the readings
// are kept too, so that a day that lies across the edge is whole. One that is there is locked: nobody rolls it up before what
// is stored in this transaction can be seen.
const ADD = `
  INSERT INTO reading_due (site_id, sensor_id, is_day, from_at, to_at)
  SELECT $1::uuid, u.sensor, u.is_day, to_timestamp(u.from_ms / 1000.0), to_timestamp(u.to_ms / 1000.0)
    FROM unnest($2::uuid[], $3::bool[], $4::float8[], $5::float8[]) AS u(sensor, is_day, from_ms, to_ms)
   WHERE to_timestamp(u.to_ms / 1000.0) > ${KEPT_FROM}
   ORDER BY 2, 3, 4
  ON CONFLICT (site_id, sensor_id, is_day, from_at) DO UPDATE SET to_at = EXCLUDED.to_at`;

/** Says which hours and days are to be rolled up. */
export async function addDue(asking: Asking, siteId: string, due: readonly Due[]): Promise<void> {
  if (due.length === 0) return;
  await asking(ADD, [
    siteId,
    arrayText(due.map(({ sensorId }) => sensorId)),
    arrayText(due.map(({ isDay }) => String(isDay))),
    arrayText(due.map(({ fromMs }) => fromMs)),
    arrayText(due.map(({ toMs }) => toMs)),
  ]);
}

// Those of one site at a time, the oldest first; of several workers each takes others.
const TAKE = `
  DELETE FROM reading_due d USING (
    SELECT site_id, sensor_id, is_day, from_at FROM reading_due
     WHERE to_at <= $1::timestamptz
     ORDER BY to_at LIMIT $2::int FOR UPDATE SKIP LOCKED) t
   WHERE d.site_id = t.site_id AND d.sensor_id = t.sensor_id AND d.is_day = t.is_day AND d.from_at = t.from_at
  RETURNING d.site_id AS "siteId", d.sensor_id AS "sensorId", d.is_day AS "isDay",
            (extract(epoch FROM d.from_at) * 1000)::float8 AS "fromMs", (extract(epoch FROM d.to_at) * 1000)::float8 AS "toMs"`;

/** Whoever moves the horizon waits for those who trust it. */
const LOCK = `hashtext('reading_rolled')`;
const MOVE = `
  INSERT INTO reading_rolled AS r (id, over_before)
  SELECT 1, $1::timestamptz FROM (SELECT pg_advisory_xact_lock(${LOCK}) OFFSET 0) AS l
  ON CONFLICT (id) DO UPDATE SET over_before = greatest(r.over_before, EXCLUDED.over_before)`;

/**
 * Up to when hours and days were taken by anybody, whatever their clock said: one that was over later is still waiting, if it
 * was ever added. It stays so until the transaction ends.
 *
 * @returns   ms since 1970
 */
export async function rolledHorizon(asking: Asking): Promise<number> {
  await asking(`SELECT pg_advisory_xact_lock_shared(${LOCK})::text`, []);
  const [row] = await asking('SELECT (extract(epoch FROM over_before) * 1000)::float8 AS ms FROM reading_rolled', []);
  return Number(row?.ms ?? -Infinity);
}

/**
 * Takes hours and days that are over and not rolled up: they are removed with the transaction that rolls them up.
 *
 * @param overBefore   they ended before this
 * @param most         and no more of them
 */
export async function takeDue(asking: Asking, overBefore: Date, most: number): Promise<(Due & { siteId: string })[]> {
  const [row] = await asking('SELECT over_before >= $1::timestamptz AS "isThere" FROM reading_rolled', [
    overBefore.toISOString(),
  ]);
  if (row?.isThere !== true) await asking(MOVE, [overBefore.toISOString()]);
  return (await asking(TAKE, [overBefore.toISOString(), most])) as unknown as (Due & { siteId: string })[];
}

/** Hours and days of a sensor that overlap a span and are not rolled up yet, or not anew. */
export async function dueWithin(siteId: string, sensorId: string, from: Date, to: Date): Promise<Due[]> {
  const { rows } = await pool().query<Due>(
    `SELECT sensor_id AS "sensorId", is_day AS "isDay", (extract(epoch FROM from_at) * 1000)::float8 AS "fromMs",
            (extract(epoch FROM to_at) * 1000)::float8 AS "toMs"
       FROM reading_due WHERE site_id = $1 AND sensor_id = $2 AND from_at < $4 AND to_at > $3`,
    [siteId, sensorId, from, to],
  );
  return rows;
}

/** Hours and days that were over half an hour ago and are not rolled up: how many, and since when. */
export async function rollUpWaiting(at: Date): Promise<{ waiting: number; oldest: string | null }> {
  const { rows } = await pool().query<{ waiting: number; oldest: Date | null }>(
    'SELECT count(*)::int AS waiting, min(to_at) AS oldest FROM reading_due WHERE to_at < $1',
    [new Date(at.getTime() - LATE_MS)],
  );
  return { waiting: rows[0]?.waiting ?? 0, oldest: rows[0]?.oldest?.toISOString() ?? null };
}
