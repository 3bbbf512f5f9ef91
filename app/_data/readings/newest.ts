import 'server-only';
import type { Quality } from '#core/readings/reading';
import { database } from '../client';
import type { Transaction } from '../transaction';
import { qualityOf } from './codes';

/** The newest reading of a sensor, however it came. */
export interface NewestReading {
  atMs: number;
  value: number;
  quality: Quality;
}

/** The newest reading of each living sensor of some systems: by id of the system, then by key of the sensor. */
export async function newestReadings(
  siteId: string,
  systemIds: readonly string[],
  asker: Pick<Transaction, '$queryRaw'> = database(),
): Promise<Map<string, Map<string, NewestReading>>> {
  const rows = await asker.$queryRaw<{ systemId: string; key: string; atMs: number; value: number; quality: number }[]>`
    SELECT DISTINCT ON (s.system_id, s.key) s.system_id AS "systemId", s.key, l.value, l.quality::int AS quality,
           (extract(epoch FROM l."at") * 1000)::float8 AS "atMs"
      FROM sensor s JOIN reading_latest l ON l.site_id = s.site_id AND l.sensor_id = s.id
     WHERE s.site_id = ${siteId}::uuid AND s.system_id = ANY(${[...systemIds]}::uuid[]) AND s.retired_at IS NULL
     ORDER BY s.system_id, s.key, l."at" DESC`;
  const bySystem = new Map<string, Map<string, NewestReading>>(systemIds.map((id) => [id, new Map()]));
  for (const { systemId, key, atMs, value, quality } of rows)
    bySystem.get(systemId)?.set(key, { atMs, value, quality: qualityOf(quality) });
  return bySystem;
}
