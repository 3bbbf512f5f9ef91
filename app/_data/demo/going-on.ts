import 'server-only';
import { pool } from '../pool';
import type { NewReading } from '../readings/store-readings';
import { originCode, originOf, qualityOf } from '../readings/codes';

/** Kind of the record entry that tells when a demonstration was loaded. */
export const LOADED = 'demonstration-loaded';

/** Ids of the sites of the demonstration whose record tells when they were loaded, and that moment. */
export async function loadedDemoSites(): Promise<{ siteId: string; loadedAt: Date }[]> {
  const { rows } = await pool().query<{ siteId: string; loadedAt: Date }>(
    `SELECT s.id AS "siteId", min(r."at") AS "loadedAt" FROM site s JOIN record r ON r.site_id = s.id AND r.kind = $1
      WHERE s.is_demo AND s.revision > 0 GROUP BY s.id ORDER BY s.id`,
    [LOADED],
  );
  return rows;
}

/**
 * What repeats, by sensor that is there still, and how: the last hour before loading of one whose alarm was open then, so
 * that it stays open; of all others the nearest day before it on which nobody put their system into a state by hand and
 * no alarm of it was up.
 */
const REPEATED = `
  WITH lasting AS (
    SELECT o.system_id, o.began_at, e."at" AS returned_at, o.definition->>'sensorId' AS sensor
      FROM alarm_occurrence o
      LEFT JOIN alarm_event e ON e.site_id = o.site_id AND e.occurrence_id = o.id AND e.kind = 'returned' AND e."at" <= $2::timestamptz
     WHERE o.site_id = $1::uuid AND o.raised_at <= $2::timestamptz),
  calm AS (
    SELECT s.id, min(b.back) AS back
      FROM system s CROSS JOIN generate_series(0, 13) AS g(days)
      CROSS JOIN LATERAL (SELECT g.days * interval '24 hours' AS back) b
     WHERE s.site_id = $1::uuid
       AND NOT EXISTS (SELECT FROM state_event v WHERE v.site_id = $1::uuid AND v.system_id = s.id
                          AND v."at" > $2::timestamptz - b.back - interval '24 hours' AND v."at" <= $2::timestamptz - b.back)
       AND NOT EXISTS (SELECT FROM lasting l WHERE l.system_id = s.id AND l.began_at <= $2::timestamptz - b.back
                          AND (l.returned_at IS NULL OR l.returned_at > $2::timestamptz - b.back - interval '24 hours'))
     GROUP BY s.id)
  SELECT n.id, CASE WHEN h.stays THEN interval '0' ELSE c.back END AS back,
         CASE WHEN h.stays THEN interval '1 hour' ELSE interval '24 hours' END AS every
    FROM sensor n JOIN calm c ON c.id = n.system_id
    CROSS JOIN LATERAL (SELECT EXISTS (SELECT FROM lasting l WHERE l.sensor = n.id::text AND l.returned_at IS NULL) AS stays) h
   WHERE n.site_id = $1::uuid AND n.retired_at IS NULL`;

/** Readings of a stretch of time, as those of the stretch that is repeated, moved by whole times of what repeats. */
const AGAIN = `
  WITH repeated AS (${REPEATED})
  SELECT r.sensor_id, r."at" + m.moved AS "at", r.value, r.quality, r.reason, r.origin
    FROM repeated p
    CROSS JOIN LATERAL (SELECT p.every * ceil(extract(epoch FROM $4::timestamptz - ($2::timestamptz - p.back)) / extract(epoch FROM p.every))::int
                               AS moved) m
    JOIN reading r ON r.site_id = $1::uuid AND r.sensor_id = p.id AND r."at" > $3::timestamptz - m.moved AND r."at" <= $4::timestamptz - m.moved
   WHERE r.origin = $5 AND r.revision = 0
   ORDER BY r."at", r.sensor_id`;

interface Row {
  sensor_id: string;
  at: Date;
  value: number;
  quality: number;
  reason: string | null;
  origin: number;
}

/**
 * What the gateways of a demonstration's site tell in a stretch of time after it was loaded: what they told before, again.
 *
 * @param loadedAt   when it was loaded
 * @param from       after this instant
 * @param to         up to this one; not before `loadedAt`
 */
export async function toldAgain(siteId: string, loadedAt: Date, from: Date, to: Date): Promise<NewReading[]> {
  const { rows } = await pool().query<Row>(AGAIN, [siteId, loadedAt, from, to, originCode('device')]);
  return rows.map(({ sensor_id, at, value, quality, reason, origin }) => ({
    sensorId: sensor_id,
    at,
    value,
    quality: qualityOf(quality),
    ...(reason === null ? {} : { reason }),
    origin: originOf(origin),
  }));
}
