import 'server-only';
import { newId } from '../new-id';
import { pool } from '../pool';
import { ARRIVAL_CHANNEL } from './arrivals';
import { arrayText, codeOf } from './asking';
import { originCode, qualityCode } from './codes';
import { goodOfEach, KEPT_LATEST, newestOfEach } from './keep-latest';
import type { NewReading, Storing } from './store-readings';
import { TOUCHED_CHANNEL } from './touched';

/** What PostgreSQL says of a key that stands already, and of two who wait for one another. */
const NOT_FRESH = ['23505', '40P01', '40001'];

const AT = (column: string) => `to_timestamp(${column} / 1000.0)`;
// In the order of the key, so that two who store the same readings at once wait for one another and never in a circle.
const STORE = `
  WITH given AS MATERIALIZED (
    SELECT u.n, u.sensor, ${AT('u.at')} AS "at", u.origin, u.value, u.quality, u.reason, u.flag, u.is_live, u.is_newest,
           ${AT('u.same_since')} AS same_since, ${AT('u.good_at')} AS good_at, u.good_value
      FROM unnest($4::uuid[], $5::float8[], $6::int2[], $7::float8[], $8::int2[], $9::text[], $10::text[], $11::bool[],
                  $12::bool[], $13::float8[], $14::float8[], $15::float8[]) WITH ORDINALITY
           AS u(sensor, at, origin, value, quality, reason, flag, is_live, is_newest, same_since, good_at, good_value, n)
     ORDER BY 2, 3, 4),
  stored AS (
    INSERT INTO reading (site_id, sensor_id, "at", origin, revision, value, quality, reason, flag, came_by, received_at)
    SELECT $1::uuid, sensor, "at", origin, 0, value, quality, reason, flag, $2::uuid, $3::timestamptz FROM given),
  latest AS (
    ${KEPT_LATEST(`
    SELECT $1::uuid, sensor, "at", origin, value, quality, reason, $3::timestamptz, good_at, good_value, same_since
      FROM given WHERE is_newest`)}),
  arrived AS (
    INSERT INTO reading_arrival (site_id, id, received_at, sensor_ids, ats, "values", qualities, origins)
    SELECT $1::uuid, $16::uuid, $3::timestamptz, array_agg(sensor ORDER BY n), array_agg("at" ORDER BY n),
           array_agg(value ORDER BY n), array_agg(quality ORDER BY n), array_agg(origin ORDER BY n)
      FROM given WHERE is_live HAVING count(*) > 0
    RETURNING pg_notify('${ARRIVAL_CHANNEL}', $1::text)),
  touched AS (
    INSERT INTO reading_touched (site_id, id, sensor_ids, froms, tos)
    SELECT $1::uuid, $17::uuid, array_agg(sensor), array_agg(first), array_agg(last)
      FROM (SELECT sensor, min("at") AS first, max("at") AS last FROM given GROUP BY sensor, date_trunc('hour', "at")) h
    RETURNING pg_notify('${TOUCHED_CHANNEL}', $1::text))
  SELECT (SELECT count(*) FROM arrived)::int + (SELECT count(*) FROM touched)::int AS told`;

/**
 * Stores readings of one site of which nothing stands yet, with all that follows from that, in one statement: what a source
 * sends is nearly always new, and every further question of a batch costs as much again.
 *
 * @param readings   none empty
 * @returns          false when one of them stands already, comes twice or is under way elsewhere: then nothing was stored
 * @throws           as `storeReadings` does
 */
export async function storeFresh(
  siteId: string,
  readings: readonly NewReading[],
  { cameBy, receivedAt }: Storing,
): Promise<boolean> {
  try {
    await pool().query({
      name: 'store-fresh',
      text: STORE,
      values: [siteId, cameBy ?? null, receivedAt.toISOString(), ...columnsOf(readings), newId(), newId()],
    });
    return true;
  } catch (error) {
    if (NOT_FRESH.includes(codeOf(error))) return false;
    throw error;
  }
}

function columnsOf(readings: readonly NewReading[]): string[] {
  const newest = newestOfEach(readings);
  const good = goodOfEach(readings);
  const goodOf = ({ sensorId }: NewReading) => good.get(sensorId);
  return [
    arrayText(readings.map(({ sensorId }) => sensorId)),
    arrayText(readings.map(({ at }) => at.getTime())),
    arrayText(readings.map(({ origin }) => originCode(origin))),
    arrayText(readings.map(({ value }) => value)),
    arrayText(readings.map(({ quality }) => qualityCode(quality))),
    arrayText(readings.map(({ reason }) => reason ?? null)),
    arrayText(readings.map(({ flag }) => flag ?? null)),
    arrayText(readings.map(({ origin, isOfPast }) => String(origin !== 'file' && isOfPast !== true))),
    arrayText(readings.map((one) => String(newest.get(one.sensorId) === one))),
    arrayText(readings.map(({ at, sameSince }) => (sameSince ?? at).getTime())),
    arrayText(readings.map((one) => goodOf(one)?.at.getTime() ?? null)),
    arrayText(readings.map((one) => goodOf(one)?.value ?? null)),
  ];
}
