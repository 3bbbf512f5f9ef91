import 'server-only';
import type { Priority } from '#core/alarms/design/priority';
import type { Transaction } from '../transaction';

/**
 * The priorities that the stored reviews propose, from what follows and the time that is left.
 *
 * @param alarmIds   alarms of the site
 * @returns          by the id of the alarm; one of which no review says so is left out
 */
export async function proposedPriorities(
  tx: Transaction,
  siteId: string,
  alarmIds: readonly string[],
): Promise<Map<string, Priority>> {
  if (alarmIds.length === 0) return new Map();
  const rows = await tx.$queryRaw<{ id: string; proposed: Priority }[]>`
    SELECT d.id, a.one->>'proposed' AS proposed
      FROM alarm_definition d
      JOIN review_result r ON r.site_id = d.site_id AND r.system_id = d.system_id
     CROSS JOIN LATERAL jsonb_array_elements(CASE jsonb_typeof(r.body->'alarms') WHEN 'array' THEN r.body->'alarms' ELSE '[]' END) AS a(one)
     WHERE d.site_id = ${siteId}::uuid AND d.id = ANY(${[...alarmIds]}::uuid[]) AND a.one->>'alarm' = d.key
       AND a.one->>'proposed' IN ('high', 'medium', 'low')`;
  return new Map(rows.map(({ id, proposed }) => [id, proposed]));
}
