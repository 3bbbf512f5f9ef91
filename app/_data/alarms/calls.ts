import 'server-only';
import type { Channel } from '#core/alarms/channels';
import type { Attempt } from '#core/alarms/told';
import type { Member, ToTell } from '#core/alarms/to-tell';
import type { Role } from '#core/rota/rota';
import { Prisma } from '../../../prisma/generated/client';
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

/**
 * What a call is about: an alarm, and how often it had called anew by then; somebody who went in alone, and how often they had
 * taken more time; or a test of the way to somebody.
 */
export type CallAbout =
  | { occurrenceId: string; again: number }
  | { callOutId: string; again: number }
  | { testId: string };

/** Somebody who is to be told, before it is stored. */
export type NewCall = CallAbout & { why: ToTell['why'] | 'test'; step: number; accountId: string; madeAt: Date };

/**
 * Adds those who are to be told, a row for each way there is to them: mail always, so that it shows where there is no address;
 * push where a browser of theirs takes calls; the webhook of the site. Who is to be told already is left as they are.
 *
 * @returns   ids of the calls that were added
 */
export async function addCalls(tx: Transaction, siteId: string, calls: readonly NewCall[]): Promise<string[]> {
  if (calls.length === 0) return [];
  const ways = await waysTo(tx, siteId, calls);
  const data = calls.flatMap((call) =>
    (ways.get(call.accountId) ?? (['mail'] as const)).map((channel) => ({ siteId, id: newId(), channel, ...call })),
  );
  const added = await tx.alarmCall.createManyAndReturn({ data, skipDuplicates: true, select: { id: true } });
  return added.map(({ id }) => id);
}

/** The ways there are to some accounts, by account: mail always, so that it shows where there is no address. */
export async function waysTo(
  tx: Transaction,
  siteId: string,
  calls: readonly Pick<NewCall, 'accountId'>[],
): Promise<Map<string, Channel[]>> {
  const accounts = [...new Set(calls.map(({ accountId }) => accountId))];
  const rows = await tx.$queryRaw<{ account: string; push: boolean; webhook: boolean }[]>`
    SELECT a.id AS account, EXISTS (SELECT FROM push_device d WHERE d.account_id = a.id) AS push,
           EXISTS (SELECT FROM call_webhook w WHERE w.site_id = ${siteId}::uuid AND w.ended_at IS NULL) AS webhook
      FROM unnest(${accounts}::uuid[]) AS a(id)`;
  return new Map(
    rows.map(({ account, push, webhook }) => [
      account,
      ['mail' as const, ...(push ? (['push'] as const) : []), ...(webhook ? (['webhook'] as const) : [])],
    ]),
  );
}

/** Somebody who is to be told, with what is needed to do it. */
export interface CallToMake {
  id: string;
  siteId: string;
  /** The alarm, the test, or whoever went in alone: one of the three. */
  occurrenceId: string | null;
  testId: string | null;
  callOutId: string | null;
  accountId: string;
  channel: Channel;
  step: number;
  why: ToTell['why'] | 'test';
  madeAt: Date;
  /** Null: they have none, or their account has ended. */
  email: string | null;
  attempts: Attempt[];
  /**
   * Whether nobody is to be told any more: somebody acknowledged, the alarm is suppressed or has called anew since, the same
   * person is called by a later step in the same way, or the test was answered or is over.
   */
  isOver: boolean;
}

// Who is called once more is not told of the earlier call besides: after an hour without mail one message is enough.
const CALLED_SINCE = Prisma.sql`EXISTS (
  SELECT FROM alarm_call n WHERE n.site_id = c.site_id AND n.occurrence_id = c.occurrence_id AND n.again = c.again
     AND n.account_id = c.account_id AND n.channel = c.channel AND n.step > c.step)`;

/** A call by its id; null when there is none. @param testsSince tests made before this instant are over */
export async function findCall(siteId: string, id: string, testsSince: Date): Promise<CallToMake | null> {
  const [row] = await database().$queryRaw<Omit<CallToMake, 'attempts'>[]>`
    SELECT c.id, c.site_id AS "siteId", c.occurrence_id AS "occurrenceId", c.test_id AS "testId",
           c.call_out_id AS "callOutId",
           c.account_id AS "accountId", c.channel, c.step, c.why, c.made_at AS "madeAt",
           CASE WHEN a.ended_at IS NULL THEN a.email END AS email,
           CASE WHEN c.call_out_id IS NOT NULL THEN EXISTS (
                  SELECT FROM call_out_event e WHERE e.site_id = c.site_id AND e.call_out_id = c.call_out_id
                     AND (e.kind = 'back' OR e.again > c.again
                          OR (e.kind = 'seen-to' AND e.again = c.again AND e.at >= c.made_at)))
                WHEN c.test_id IS NULL THEN NOT EXISTS (
                  SELECT FROM alarm_open o WHERE o.site_id = c.site_id AND o.occurrence_id = c.occurrence_id
                     AND NOT o.acknowledged AND NOT o.suppressed AND o.again = c.again) OR ${CALLED_SINCE}
                ELSE c.made_at < ${testsSince.toISOString()}::timestamptz OR EXISTS (
                  SELECT FROM test_call_answer t WHERE t.site_id = c.site_id AND t.test_id = c.test_id)
           END AS "isOver"
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

/** Adds an attempt to tell somebody. @param detail what a service said, in short */
export async function addAttempt(
  tx: Transaction,
  { siteId, id }: Pick<CallToMake, 'siteId' | 'id'>,
  { at, result, detail }: { at: Date; result: Attempt['result']; detail?: string },
): Promise<void> {
  await tx.alarmCallTry.create({ data: { siteId, id: newId(), callId: id, at, result, detail: detail ?? null } });
}

/** A call that nobody has taken onward yet. */
export interface CallWaiting {
  siteId: string;
  id: string;
  madeAt: Date;
  attempts: Attempt[];
}

/**
 * Calls that are wanted still and that no service has taken, of every site: of alarms that nobody acknowledged, of people who are
 * not back, and of tests.
 *
 * @param testsSince   tests made before this instant are over
 */
export async function findCallsWaiting(testsSince: Date): Promise<CallWaiting[]> {
  const rows = await database().$queryRaw<(Omit<CallWaiting, 'attempts'> & { attempts: Attempt[] | null })[]>`
    SELECT c.site_id AS "siteId", c.id, c.made_at AS "madeAt",
           (SELECT jsonb_agg(jsonb_build_object('atMs', extract(epoch FROM t.at) * 1000, 'result', t.result)
                             ORDER BY t.at, t.id)
              FROM alarm_call_try t WHERE t.site_id = c.site_id AND t.call_id = c.id) AS attempts
      FROM (SELECT c.* FROM alarm_open o JOIN alarm_call c ON c.site_id = o.site_id AND c.occurrence_id = o.occurrence_id
                                       AND c.again = o.again
             WHERE NOT o.acknowledged AND NOT o.suppressed AND NOT ${CALLED_SINCE}
            UNION ALL
            SELECT c.* FROM call_out o JOIN alarm_call c ON c.site_id = o.site_id AND c.call_out_id = o.id
             WHERE NOT EXISTS (SELECT FROM call_out_event e WHERE e.site_id = o.site_id AND e.call_out_id = o.id
                                  AND (e.kind = 'back' OR e.again > c.again
                                       OR (e.kind = 'seen-to' AND e.again = c.again AND e.at >= c.made_at)))
            UNION ALL
            SELECT c.* FROM test_call t JOIN alarm_call c ON c.site_id = t.site_id AND c.test_id = t.id
             WHERE t.made_at >= ${testsSince.toISOString()}::timestamptz AND NOT EXISTS (
                   SELECT FROM test_call_answer r WHERE r.site_id = t.site_id AND r.test_id = t.id)) AS c
     WHERE NOT EXISTS (SELECT FROM alarm_call_try t WHERE t.site_id = c.site_id AND t.call_id = c.id AND t.result = 'taken')`;
  return rows.map((row) => ({ ...row, attempts: row.attempts ?? [] }));
}
