import 'server-only';
import type { Transaction } from '../transaction';

/**
 * How long there is from an alarm to the last chance in its gravest fault case, by the stored review of its system.
 *
 * @param alarmIds   alarms of the site
 * @returns          s by the id of the alarm; one of which no review says so is left out
 */
export async function availableS(
  tx: Transaction,
  siteId: string,
  alarmIds: readonly string[],
): Promise<Map<string, number>> {
  if (alarmIds.length === 0) return new Map();
  const rows = await tx.$queryRaw<{ id: string; s: number }[]>`
    SELECT d.id, (a.one->>'availableS')::float8 AS s
      FROM alarm_definition d
      JOIN review_result r ON r.site_id = d.site_id AND r.system_id = d.system_id
     CROSS JOIN LATERAL jsonb_array_elements(CASE jsonb_typeof(r.body->'alarms') WHEN 'array' THEN r.body->'alarms' ELSE '[]' END) AS a(one)
     WHERE d.site_id = ${siteId}::uuid AND d.id = ANY(${[...alarmIds]}::uuid[]) AND a.one->>'alarm' = d.key
       AND a.one->>'availableS' IS NOT NULL`;
  return new Map(rows.map(({ id, s }) => [id, s]));
}
