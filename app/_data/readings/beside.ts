import 'server-only';
import { pool } from '../pool';

/** s before an instant within which a reading still stands beside it. */
const NEAR_S = 1800;

const BESIDE = `
  SELECT w.sensor, (extract(epoch FROM w."at") * 1000)::float8 AS "atMs", r.value
    FROM unnest($2::uuid[], $3::timestamptz[]) AS w(sensor, "at")
    JOIN LATERAL (
      SELECT value FROM reading
       WHERE site_id = $1 AND sensor_id = w.sensor AND origin <> 3 AND quality = 0
         AND "at" <= w."at" AND "at" > w."at" - make_interval(secs => ${NEAR_S})
       ORDER BY "at" DESC, revision DESC LIMIT 1) r ON true`;

/**
 * What sensors read by themselves at some instants, or in the half hour before; only what is good. One question.
 *
 * @returns   by id of the sensor, then by the instant (ms since 1970); none of a sensor that read nothing by itself
 */
export async function readingsBeside(
  siteId: string,
  asked: readonly { sensorId: string; atMs: number }[],
): Promise<Map<string, Map<number, number>>> {
  const found = new Map<string, Map<number, number>>();
  if (asked.length === 0) return found;
  const { rows } = await pool().query<{ sensor: string; atMs: number; value: number }>(BESIDE, [
    siteId,
    asked.map(({ sensorId }) => sensorId),
    asked.map(({ atMs }) => new Date(atMs)),
  ]);
  for (const { sensor, atMs, value } of rows) {
    const own = found.get(sensor) ?? new Map<number, number>();
    found.set(sensor, own.set(Math.round(atMs), value));
  }
  return found;
}
