import 'server-only';
import { arrayText, type Asking } from './asking';

/** The limits that alarms hold a sensor to: true above the one, below the other. */
export interface SensorLimits {
  sensorId: string;
  above: number | null;
  below: number | null;
}

/** Limits count from this instant on where none were known before. */
const EVER = '1970-01-01T00:00:00Z';

// A sensor whose limits are gone has a row with none.
const ADD = `
  WITH wanted AS (
    SELECT u.* FROM unnest($2::uuid[], $3::float8[], $4::float8[]) AS u(sensor_id, above, below)),
  newest AS (
    SELECT DISTINCT ON (sensor_id) sensor_id, above, below FROM reading_limit WHERE site_id = $1::uuid
     ORDER BY sensor_id, since DESC)
  INSERT INTO reading_limit (site_id, sensor_id, since, above, below)
  SELECT $1::uuid, coalesce(w.sensor_id, n.sensor_id), CASE WHEN n.sensor_id IS NULL THEN $5 ELSE $6 END::timestamptz,
         w.above, w.below
    FROM wanted w FULL JOIN newest n ON n.sensor_id = w.sensor_id
   WHERE (w.above, w.below) IS DISTINCT FROM (n.above, n.below)
  ON CONFLICT (site_id, sensor_id, since) DO NOTHING
  RETURNING sensor_id AS "sensorId", since = $5::timestamptz AS "isFirst"`;

/**
 * Keeps limits that are others than before, from now on; the first ones that are known of a sensor count for all that was read.
 *
 * @returns   sensors whose first ones these are: what was rolled up of them has to be anew
 */
export async function keepLimits(
  asking: Asking,
  siteId: string,
  limits: readonly SensorLimits[],
  at: Date,
): Promise<string[]> {
  const rows = await asking(ADD, [
    siteId,
    arrayText(limits.map(({ sensorId }) => sensorId)),
    arrayText(limits.map(({ above }) => above)),
    arrayText(limits.map(({ below }) => below)),
    EVER,
    at.toISOString(),
  ]);
  return rows.filter(({ isFirst }) => isFirst).map(({ sensorId }) => String(sensorId));
}

/** Says that all that was rolled up of these sensors is to be anew, as far as their readings are kept. */
export async function dueAnew(asking: Asking, siteId: string, sensorIds: readonly string[]): Promise<void> {
  if (sensorIds.length === 0) return;
  await asking(
    `INSERT INTO reading_due (site_id, sensor_id, is_day, from_at, to_at)
     SELECT DISTINCT site_id, sensor_id, is_day, from_at, to_at FROM reading_roll_up
      WHERE site_id = $1::uuid AND sensor_id = ANY($2::uuid[])
        AND from_at >= coalesce((SELECT max("month") + interval '1 month' FROM reading_retired), '-infinity')::timestamp AT TIME ZONE 'UTC'
     ON CONFLICT DO NOTHING`,
    [siteId, arrayText([...sensorIds])],
  );
}
