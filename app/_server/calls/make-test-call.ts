import 'server-only';
import type { z } from 'zod';
import { ok, type Result, refused } from '#core/result';
import { addCalls, findTellable } from '#data/alarms/calls';
import { addTestCall } from '#data/calls/test-calls';
import { news } from '#data/news';
import { appendRecords } from '#data/records/append-records';
import { inTransaction, type Transaction } from '#data/transaction';
import { testCallRequest } from '#shape/calls/requests';
import { wakeCall } from '../alarms/wake-call';
import { now } from '../clock';
import { may } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';

export const makeTestCallShape = testCallRequest;

/** Has oneself called for a test; somebody else, whoever may put people on duty. */
export async function makeTestCall(
  who: Who,
  { site: key, account = who.id }: z.output<typeof makeTestCallShape>,
): Promise<Result<{ site: string }, Refusal>> {
  const found = await siteFor(who, 'acknowledge', key);
  if (!found.ok) return found;
  if (account !== who.id && !may(who, 'describe', key)) return refused({ why: 'not-allowed' });
  const siteId = found.value.id;
  const at = now();
  return await inTransaction(async (tx) => {
    const members = await findTellable(tx, siteId);
    if (!members.some((member) => member.account === account)) return refused({ why: 'not-found', what: 'person' });
    await callForTest(tx, siteId, { accountId: account, by: who.id }, at);
    return ok({ site: key });
  });
}

/** Calls somebody for a test, by every way there is to them. @param by account that asked for it; null when it was due */
export async function callForTest(
  tx: Transaction,
  siteId: string,
  { accountId, by }: { accountId: string; by: string | null },
  at: Date,
): Promise<void> {
  const testId = await addTestCall(tx, siteId, { accountId, by }, at);
  const calls = await addCalls(tx, siteId, [{ testId, accountId, why: 'test', step: 1, madeAt: at }]);
  for (const id of calls) await wakeCall(tx, { siteId, id });
  const body = { ...(by === null ? {} : { by }), account: accountId, test: testId };
  await appendRecords(tx, siteId, [{ kind: 'test-call-made', body }], at);
  await news(tx, siteId, 'alarms');
}
