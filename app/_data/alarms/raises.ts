import 'server-only';
import type { Raise } from '#core/alarms/performance/raise';
import { database } from '../client';

/** A time that an alarm was raised, and what it was called then. */
export interface RaiseRow extends Raise {
  name: string;
  system: string;
}

/** Every time an alarm of a site was raised within a stretch, oldest first, with what became of it and who was called. */
export async function listRaises(siteId: string, from: Date, to: Date): Promise<RaiseRow[]> {
  return await database().$queryRaw<RaiseRow[]>`
    SELECT o.alarm_id AS alarm, o.definition->>'name' AS name, s.name AS system,
           coalesce(o.definition->'priority'->>'level', o.definition->>'proposed') AS priority,
           (extract(epoch FROM o.raised_at) * 1000)::float8 AS "raisedMs",
           (extract(epoch FROM e.returned) * 1000)::float8 AS "returnedMs",
           (extract(epoch FROM e.acknowledged) * 1000)::float8 AS "acknowledgedMs",
           coalesce((SELECT jsonb_agg(jsonb_build_object('account', t.account_id, 'atMs', t.at))
              FROM (SELECT c.account_id, extract(epoch FROM min(c.made_at)) * 1000 AS at FROM alarm_call c
                     WHERE c.site_id = o.site_id AND c.occurrence_id = o.id GROUP BY c.account_id) AS t), '[]') AS told
      FROM alarm_occurrence o JOIN system s ON s.site_id = o.site_id AND s.id = o.system_id
      LEFT JOIN LATERAL (
           SELECT min(at) FILTER (WHERE kind = 'returned') AS returned,
                  min(at) FILTER (WHERE kind = 'acknowledged') AS acknowledged
             FROM alarm_event WHERE site_id = o.site_id AND occurrence_id = o.id) AS e ON true
     WHERE o.site_id = ${siteId}::uuid AND o.raised_at >= ${from.toISOString()}::timestamptz
       AND o.raised_at < ${to.toISOString()}::timestamptz
     ORDER BY o.raised_at, o.id`;
}
