import 'server-only';
import type { Attempt } from '#core/alarms/told';
import type { Member, ToTell } from '#core/alarms/to-tell';
import type { Role } from '#core/rota/rota';
import { database } from '../client';
import { newId } from '../new-id';
import type { Transaction } from '../transaction';

/** Everybody who may be told of an alarm of a site: its members, and those who have a role at every site. */
export async function findTellable(tx: Transaction, siteId: string): Promise<Member[]> {
  const rows = await tx.$queryRaw<{ account: string; role: Role; person: string | null; isElsewhere: boolean }[]>`
    SELECT a.id AS account, coalesce(m.role, a.everywhere) AS role, p.key AS person, m.account_id IS NULL AS "isElsewhere"
      FROM account a
      LEFT JOIN membership m ON m.account_id = a.id AND m.site_id = ${siteId}::uuid AND m.ended_at IS NULL
      LEFT JOIN person p ON p.site_id = m.site_id AND p.id = m.person_id AND p.retired_at IS NULL
     WHERE a.ended_at IS NULL AND (m.account_id IS NOT NULL OR a.everywhere IS NOT NULL)
     ORDER BY a.id`;
  return rows;
}

/** Somebody who is to be told, before it is stored. */
export interface NewCall extends Pick<ToTell, 'why'> {
  occurrenceId: string;
  /** How often the alarm had called anew by then. */
  again: number;
  step: number;
  accountId: string;
  madeAt: Date;
}

/** Adds those who are to be told; who is already is left as they are. @returns ids of the calls that were added */
export async function addCalls(tx: Transaction, siteId: string, calls: readonly NewCall[]): Promise<string[]> {
  if (calls.length === 0) return [];
  const data = calls.map((call) => ({ siteId, id: newId(), channel: 'mail', ...call }));
  const added = await tx.alarmCall.createManyAndReturn({ data, skipDuplicates: true, select: { id: true } });
  return added.map(({ id }) => id);
}

/** Somebody who is to be told, with what is needed to do it. */
export interface CallToMake {
  id: string;
  siteId: string;
  occurrenceId: string;
  accountId: string;
  step: number;
  why: ToTell['why'];
  madeAt: Date;
  /** Null: they have none, or their account has ended. */
  email: string | null;
  attempts: Attempt[];
  /** Whether nobody is to be told any more: somebody acknowledged, the alarm is suppressed, or it has called anew since. */
  acknowledged: boolean;
}

/** A call by its id; null when there is none. */
export async function findCall(siteId: string, id: string): Promise<CallToMake | null> {
  const [row] = await database().$queryRaw<Omit<CallToMake, 'attempts'>[]>`
    SELECT c.id, c.site_id AS "siteId", c.occurrence_id AS "occurrenceId", c.account_id AS "accountId", c.step, c.why,
           c.made_at AS "madeAt", CASE WHEN a.ended_at IS NULL THEN a.email END AS email,
           NOT EXISTS (SELECT FROM alarm_open o WHERE o.site_id = c.site_id AND o.occurrence_id = c.occurrence_id
                          AND NOT o.acknowledged AND NOT o.suppressed AND o.again = c.again) AS acknowledged
      FROM alarm_call c LEFT JOIN account a ON a.id = c.account_id
     WHERE c.site_id = ${siteId}::uuid AND c.id = ${id}::uuid`;
  if (!row) return null;
  const tries = await database().alarmCallTry.findMany({
    where: { siteId, callId: id },
    orderBy: [{ at: 'asc' }, { id: 'asc' }],
  });
  return {
    ...row,
    attempts: tries.map(({ at, result }) => ({ atMs: at.getTime(), result: result as Attempt['result'] })),
  };
}

/** Adds an attempt to tell somebody. @param detail what a mail server said, in short */
export async function addAttempt(
  tx: Transaction,
  { siteId, id }: Pick<CallToMake, 'siteId' | 'id'>,
  { at, result, detail }: { at: Date; result: Attempt['result']; detail?: string },
): Promise<void> {
  await tx.alarmCallTry.create({ data: { siteId, id: newId(), callId: id, at, result, detail: detail ?? null } });
}

/** Calls of alarms that nobody acknowledged and no mail server has taken, of every site. */
export async function findCallsWaiting(): Promise<{ siteId: string; id: string; madeAt: Date; attempts: Attempt[] }[]> {
  const rows = await database().$queryRaw<{ siteId: string; id: string; madeAt: Date; attempts: Attempt[] | null }[]>`
    SELECT c.site_id AS "siteId", c.id, c.made_at AS "madeAt",
           (SELECT jsonb_agg(jsonb_build_object('atMs', extract(epoch FROM t.at) * 1000, 'result', t.result)
                             ORDER BY t.at, t.id)
              FROM alarm_call_try t WHERE t.site_id = c.site_id AND t.call_id = c.id) AS attempts
      FROM alarm_open o JOIN alarm_call c ON c.site_id = o.site_id AND c.occurrence_id = o.occurrence_id
                            AND c.again = o.again
     WHERE NOT o.acknowledged AND NOT o.suppressed
       AND NOT EXISTS (SELECT FROM alarm_call_try t WHERE t.site_id = c.site_id AND t.call_id = c.id AND t.result = 'taken')`;
  return rows.map((row) => ({ ...row, attempts: row.attempts ?? [] }));
}
