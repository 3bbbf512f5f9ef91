import 'server-only';
import { database } from '../client';
import { qualityCode } from './codes';

/** What a meter read: W of one piece of equipment. */
export interface DrawnRow {
  systemId: string;
  /** Key of the equipment. */
  equipment: string;
  atMs: number;
  w: number;
}

/** What the meters of a site's living equipment read since an instant, by devices and good, in order of time. */
export async function drawnSince(siteId: string, since: Date): Promise<DrawnRow[]> {
  return await database().$queryRaw<DrawnRow[]>`
    SELECT DISTINCT ON (r.sensor_id, r."at") s.system_id AS "systemId", e.key AS equipment, r.value AS w,
           (extract(epoch FROM r."at") * 1000)::float8 AS "atMs"
      FROM sensor s
      JOIN equipment e ON e.site_id = s.site_id AND e.id = s.equipment_id AND e.retired_at IS NULL
      JOIN reading r ON r.site_id = s.site_id AND r.sensor_id = s.id AND r."at" >= ${since.toISOString()}::timestamptz
     WHERE s.site_id = ${siteId}::uuid AND s.retired_at IS NULL AND s.quantity = 'watts' AND r.origin = 1
       AND r.quality = ${qualityCode('good')}
     ORDER BY r.sensor_id, r."at", r.revision DESC`;
}
