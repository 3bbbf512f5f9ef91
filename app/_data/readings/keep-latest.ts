import 'server-only';
import { arrayText, type Asking } from './asking';
import { originCode, qualityCode } from './codes';
import type { NewReading } from './store-readings';

/**
 * Keeps the newest reading of each sensor, given one row a sensor in the order of these. Of two readings of one instant the one
 * somebody took by hand counts, then the file's, then the device's.
 *
 * @param rows   a SELECT, in the order of the sensors
 */
export const KEPT_LATEST = (rows: string): string => `
  INSERT INTO reading_latest AS l
         (site_id, sensor_id, "at", origin, value, quality, reason, received_at, good_at, good_value, same_since)
  ${rows}
  ON CONFLICT (site_id, sensor_id) DO UPDATE SET
    ("at", origin, value, quality, reason, received_at, same_since) = (
      SELECT n."at", n.origin, n.value, n.quality, n.reason, n.received_at, n.same_since
        FROM (VALUES (l."at", l.origin, l.value, l.quality, l.reason, l.received_at, l.same_since, false),
                     (EXCLUDED."at", EXCLUDED.origin, EXCLUDED.value, EXCLUDED.quality, EXCLUDED.reason,
                      EXCLUDED.received_at, EXCLUDED.same_since, true))
               AS n("at", origin, value, quality, reason, received_at, same_since, came_now)
       ORDER BY n."at" DESC, n.origin DESC, n.came_now DESC LIMIT 1),
    good_value = CASE WHEN l.good_at IS NULL OR EXCLUDED.good_at >= l.good_at THEN EXCLUDED.good_value ELSE l.good_value END,
    good_at = greatest(l.good_at, EXCLUDED.good_at)`;

const KEEP = KEPT_LATEST(`
  SELECT $1::uuid, u.sensor, to_timestamp(u.at / 1000.0), u.origin, u.value, u.quality, u.reason, $9::timestamptz,
         to_timestamp(u.good_at / 1000.0), u.good_value, to_timestamp(u.same_since / 1000.0)
    FROM unnest($2::uuid[], $3::float8[], $4::int2[], $5::float8[], $6::int2[], $7::text[], $8::float8[], $10::float8[],
                $11::float8[]) AS u(sensor, at, origin, value, quality, reason, good_at, good_value, same_since)
   ORDER BY 2`);

// After a correction nothing that was remembered is sure: both are looked up among the readings themselves.
const STANDING = `SELECT r.* FROM reading r WHERE r.site_id = $1::uuid AND r.sensor_id = s.id AND NOT EXISTS (
  SELECT FROM reading n WHERE n.site_id = r.site_id AND n.sensor_id = r.sensor_id AND n."at" = r."at"
     AND n.origin = r.origin AND n.revision > r.revision)`;
const LOOK_UP = `
  UPDATE reading_latest l SET "at" = r."at", origin = r.origin, value = r.value, quality = r.quality, reason = r.reason,
         received_at = r.received_at, same_since = r."at", good_at = g."at", good_value = g.value
    FROM unnest($2::uuid[]) AS s(id)
   CROSS JOIN LATERAL (${STANDING} ORDER BY r."at" DESC, r.origin DESC LIMIT 1) r
    LEFT JOIN LATERAL (${STANDING} AND r.quality = 0 ORDER BY r."at" DESC, r.origin DESC LIMIT 1) g ON true
   WHERE l.site_id = $1::uuid AND l.sensor_id = s.id`;

/**
 * Keeps the newest reading of each sensor, and the newest good one. One that is older than what is there changes nothing.
 *
 * @param kept        readings that were stored
 * @param corrected   sensors of which one was corrected
 */
export async function keepLatest(
  asking: Asking,
  siteId: string,
  kept: readonly NewReading[],
  corrected: ReadonlySet<string>,
  receivedAt: Date,
): Promise<void> {
  const newest = newestOfEach(kept);
  const good = goodOfEach(kept);
  const rows = [...newest.values()];
  await asking(KEEP, [
    siteId,
    arrayText(rows.map(({ sensorId }) => sensorId)),
    arrayText(rows.map(({ at }) => at.getTime())),
    arrayText(rows.map(({ origin }) => originCode(origin))),
    arrayText(rows.map(({ value }) => value)),
    arrayText(rows.map(({ quality }) => qualityCode(quality))),
    arrayText(rows.map(({ reason }) => reason ?? null)),
    arrayText(rows.map(({ sensorId }) => good.get(sensorId)?.at.getTime() ?? null)),
    receivedAt.toISOString(),
    arrayText(rows.map(({ sensorId }) => good.get(sensorId)?.value ?? null)),
    arrayText(rows.map(({ at, sameSince }) => (sameSince ?? at).getTime())),
  ]);
  if (corrected.size > 0) await asking(LOOK_UP, [siteId, arrayText([...corrected].sort())]);
}

/** The newest reading of each sensor that is good. */
export function goodOfEach(readings: readonly NewReading[]): Map<string, NewReading> {
  return newestOfEach(readings.filter(({ quality }) => quality === 'good'));
}

/** The newest reading of each sensor. */
export function newestOfEach(readings: readonly NewReading[]): Map<string, NewReading> {
  const newest = new Map<string, NewReading>();
  for (const reading of readings) {
    const other = newest.get(reading.sensorId);
    if (!other || isNewer(reading, other)) newest.set(reading.sensorId, reading);
  }
  return newest;
}

function isNewer(one: NewReading, other: NewReading): boolean {
  const laterMs = one.at.getTime() - other.at.getTime();
  return laterMs > 0 || (laterMs === 0 && originCode(one.origin) >= originCode(other.origin));
}
