import 'server-only';
import type { Channel } from '#core/alarms/channels';
import type { Reached } from '#core/alarms/test-calls';
import { database } from '../client';
import { newId } from '../new-id';
import type { Transaction } from '../transaction';

/** Adds a call to somebody that is only a test. @param by account that asked for it; null when it was due */
export async function addTestCall(
  tx: Transaction,
  siteId: string,
  { accountId, by }: { accountId: string; by: string | null },
  at: Date,
): Promise<string> {
  const id = newId();
  await tx.testCall.create({ data: { siteId, id, accountId, madeAt: at, madeBy: by } });
  return id;
}

/** Notes that somebody got a test call. @returns whether it was not noted before */
export async function addTestAnswer(
  tx: Transaction,
  siteId: string,
  { testId, channel, from }: { testId: string; channel: Channel | null; from: string | null },
  at: Date,
): Promise<boolean> {
  const data = [{ siteId, testId, at, channel, from }];
  return (await tx.testCallAnswer.createMany({ data, skipDuplicates: true })).count > 0;
}

/** Whose a test call is; null when there is none. */
export async function findTestCall(siteId: string, id: string): Promise<{ accountId: string } | null> {
  return await database().testCall.findUnique({ where: { siteId_id: { siteId, id } }, select: { accountId: true } });
}

/** What is known of reaching somebody, and their newest test call. */
export interface ReachedRow extends Reached {
  account: string;
  testId: string | null;
  /** By which way the newest answered test came, as they said. */
  channel: Channel | null;
}

/**
 * What is known of reaching everybody who was ever called for a test at a site or acknowledged an alarm of which some service
 * had taken a message to them before.
 *
 * @param since   alarms acknowledged before this instant are left out
 */
export async function listReached(siteId: string, since: Date): Promise<Map<string, ReachedRow>> {
  const rows = await database().$queryRaw<
    {
      account: string;
      testId: string | null;
      madeMs: number | null;
      ownMs: number | null;
      answeredMs: number | null;
      alarmMs: number | null;
      channel: Channel | null;
    }[]
  >`
    WITH newest AS (
      SELECT DISTINCT ON (t.account_id) t.account_id AS account, t.id, t.made_at, r.at
        FROM test_call t LEFT JOIN test_call_answer r ON r.site_id = t.site_id AND r.test_id = t.id
       WHERE t.site_id = ${siteId}::uuid ORDER BY t.account_id, t.made_at DESC),
    answered AS (
      SELECT DISTINCT ON (t.account_id) t.account_id AS account, r.at, r.channel
        FROM test_call t JOIN test_call_answer r ON r.site_id = t.site_id AND r.test_id = t.id
       WHERE t.site_id = ${siteId}::uuid ORDER BY t.account_id, r.at DESC),
    seen AS (
      SELECT c.account_id AS account, max(e.at) AS at
        FROM alarm_event e
        JOIN alarm_call c ON c.site_id = e.site_id AND c.occurrence_id = e.occurrence_id AND c.account_id::text = e.by
       WHERE e.site_id = ${siteId}::uuid AND e.kind IN ('acknowledged', 'acknowledged-too')
         AND e.at >= ${since.toISOString()}::timestamptz AND EXISTS (
               SELECT FROM alarm_call_try t WHERE t.site_id = c.site_id AND t.call_id = c.id AND t.result = 'taken' AND t.at <= e.at)
       GROUP BY c.account_id)
    SELECT account, n.id AS "testId", a.channel,
           (extract(epoch FROM n.made_at) * 1000)::float8 AS "madeMs", (extract(epoch FROM n.at) * 1000)::float8 AS "ownMs",
           (extract(epoch FROM a.at) * 1000)::float8 AS "answeredMs", (extract(epoch FROM s.at) * 1000)::float8 AS "alarmMs"
      FROM newest n FULL JOIN answered a USING (account) FULL JOIN seen s USING (account)`;
  return new Map(
    rows.map(({ account, testId, madeMs, ownMs, answeredMs, alarmMs, channel }) => [
      account,
      { account, testId, channel, answeredMs, alarmMs, test: madeMs === null ? null : { madeMs, answeredMs: ownMs } },
    ]),
  );
}

/**
 * Test calls of a site that nobody answered, by account: how many since they last answered one, and when the newest was made.
 *
 * @param before   those made later still wait for their answer
 */
export async function unansweredTests(
  siteId: string,
  before: Date,
): Promise<{ account: string; tests: number; madeAt: Date }[]> {
  return await database().$queryRaw<{ account: string; tests: number; madeAt: Date }[]>`
    SELECT t.account_id AS account, count(*)::int AS tests, max(t.made_at) AS "madeAt" FROM test_call t
     WHERE t.site_id = ${siteId}::uuid AND t.made_at <= ${before.toISOString()}::timestamptz AND NOT EXISTS (
           SELECT FROM test_call o JOIN test_call_answer r ON r.site_id = o.site_id AND r.test_id = o.id
            WHERE o.site_id = t.site_id AND o.account_id = t.account_id AND r.at >= t.made_at)
     GROUP BY t.account_id`;
}

/** Nothing is known of reaching somebody. */
export function neverReached(account: string): ReachedRow {
  return { account, testId: null, channel: null, answeredMs: null, alarmMs: null, test: null };
}
