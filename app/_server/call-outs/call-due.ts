import 'server-only';
import { rosterAt } from '#core/alarms/roster';
import { type Telling, tellFirst, tellNext } from '#core/alarms/to-tell';
import { addCalls, findTellable } from '#data/alarms/calls';
import { addCallOutEvent, type CallOutRow, openCallOuts } from '#data/call-outs/call-outs';
import { loadFacility } from '#data/facility/load-facility';
import { news } from '#data/news';
import { appendRecords } from '#data/records/append-records';
import { inTransaction, type Transaction } from '#data/transaction';
import { wakeCall } from '../alarms/wake-call';
import { rotaOf } from '../rota/rota-of';
import { remindInTime } from './remind';
import { standingOf } from './standing';

/** ms by which the clock of the database, which says when a job is due, may be ahead of ours. */
const EARLY_MS = 2000;

/**
 * Has the next people called for everybody who went in alone and is not back in time: first whoever is on, then step after step
 * as the site calls for an alarm, then everyone again and again. A step is called once, whichever workers look at the same time.
 * They themselves are reminded some minutes before.
 *
 * @param at   the present
 */
export async function callDue(at: Date): Promise<void> {
  for (const callOut of await openCallOuts()) {
    await remindInTime(callOut, at);
    const { nextMs } = standingOf(callOut, at);
    if (nextMs !== null && nextMs <= at.getTime() + EARLY_MS) await callNext(callOut, at);
  }
}

async function callNext(callOut: CallOutRow, at: Date): Promise<void> {
  const { siteId, id, accountId } = callOut;
  const { again, step: before } = standingOf(callOut, at);
  const step = before + 1;
  await inTransaction(async (tx) => {
    if (!(await addCallOutEvent(tx, callOut, { kind: 'overdue', again, step, at }))) return;
    const { whom } = await tellingOf(tx, callOut, step, at);
    const calls = whom.map(({ account, why }) => ({ callOutId: id, again, step, accountId: account, why, madeAt: at }));
    for (const call of await addCalls(tx, siteId, calls)) await wakeCall(tx, { siteId, id: call });
    const body = { callOut: id, account: accountId, step, called: whom.length };
    await appendRecords(tx, siteId, [{ kind: 'call-out-overdue', body }], at);
    await news(tx, siteId, 'alarms');
  });
}

/** Whoever is to be called at a step; never the one who is missing. */
async function tellingOf(tx: Transaction, { siteId, accountId }: CallOutRow, step: number, at: Date): Promise<Telling> {
  const members = (await findTellable(tx, siteId)).filter(({ account }) => account !== accountId);
  const loaded = await loadFacility(siteId);
  if (!loaded) return tellNext(step, { on: [], members });
  const { exceptions } = await rotaOf(siteId, loaded.facility, at.getTime(), tx);
  const roster = rosterAt(loaded.facility, exceptions, members, at.getTime());
  return step === 1 ? tellFirst('rota', roster) : tellNext(step - 1, roster);
}
