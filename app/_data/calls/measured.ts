import 'server-only';
import type { AnsweredAlarm } from '#core/alarms/answers';
import type { PeopleFacts } from '#core/alarms/measured';
import { database } from '../client';
import type { Transaction } from '../transaction';

/** What was measured of the people of a site; null: nothing yet. */
export async function findMeasured(siteId: string): Promise<PeopleFacts | null> {
  const found = await database().peopleMeasured.findUnique({
    where: { siteId },
    select: { facts: true },
  });
  return found && (found.facts as unknown as PeopleFacts);
}

/** Keeps what was measured of the people of a site. */
export async function keepMeasured(tx: Transaction, siteId: string, facts: PeopleFacts, at: Date): Promise<void> {
  const row = { measuredAt: at, facts: facts as unknown as object };
  await tx.peopleMeasured.upsert({ where: { siteId }, create: { siteId, ...row }, update: row });
  await tx.site.update({ where: { id: siteId }, data: { measuredAt: at }, select: { id: true } });
}

/** Alarms of a site that called people by the rota, raised since an instant, and what became of each. */
export async function answeredAlarms(siteId: string, since: Date): Promise<AnsweredAlarm[]> {
  return await database().$queryRaw<AnsweredAlarm[]>`
    SELECT bool_or(c.why = 'on-site') AS "isOnSite",
           (extract(epoch FROM o.raised_at) * 1000)::float8 AS "raisedMs",
           (extract(epoch FROM min(e.at) FILTER (WHERE e.kind = 'acknowledged')) * 1000)::float8 AS "acknowledgedMs",
           (extract(epoch FROM min(e.at) FILTER (WHERE e.kind = 'returned')) * 1000)::float8 AS "returnedMs"
      FROM alarm_occurrence o
      JOIN alarm_call c ON c.site_id = o.site_id AND c.occurrence_id = o.id AND c.step = 1 AND c.why IN ('on-site', 'on-call')
      LEFT JOIN alarm_event e ON e.site_id = o.site_id AND e.occurrence_id = o.id AND e.kind IN ('acknowledged', 'returned')
     WHERE o.site_id = ${siteId}::uuid AND o.raised_at >= ${since.toISOString()}::timestamptz
     GROUP BY o.id, o.raised_at`;
}

/** Keys of the people of the rota, by the account they sign in by. */
export async function peopleByAccount(siteId: string): Promise<Map<string, string>> {
  const rows = await database().$queryRaw<{ account: string; person: string }[]>`
    SELECT m.account_id AS account, p.key AS person FROM membership m
      JOIN person p ON p.site_id = m.site_id AND p.id = m.person_id AND p.retired_at IS NULL
     WHERE m.site_id = ${siteId}::uuid AND m.ended_at IS NULL`;
  return new Map(rows.map(({ account, person }) => [account, person]));
}
