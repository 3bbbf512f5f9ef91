import 'server-only';
import type { Standing } from '#core/readings/judge-after';
import { pool } from '../pool';
import { arrayText } from './asking';
import { qualityOf } from './codes';

const BEFORE = `
  SELECT sensor_id AS id, (extract(epoch FROM "at") * 1000)::float8 AS "atMs", value, quality,
         (extract(epoch FROM coalesce(same_since, "at")) * 1000)::float8 AS "sameSinceMs"
    FROM reading_latest WHERE site_id = $1 AND sensor_id = ANY($2::uuid[]) AND origin = 1`;

/** The newest readings of these sensors that came by themselves, as those that come are judged by them; none of a sensor that has none. */
export async function standingOf(siteId: string, sensorIds: readonly string[]): Promise<Map<string, Standing>> {
  if (sensorIds.length === 0) return new Map();
  const { rows } = await pool().query<Omit<Standing, 'quality'> & { id: string; quality: number }>({
    name: 'standing-of',
    text: BEFORE,
    values: [siteId, arrayText(sensorIds)],
  });
  return new Map(rows.map(({ id, quality, ...one }) => [id, { ...one, quality: qualityOf(quality) }]));
}
