import 'server-only';
import { ok, type Result, refused } from '#core/result';
import { accountNames } from '#data/accounts/names';
import { addByHand, findByHand, type HandAlarm, systemIdOf } from '#data/alarms/by-hand';
import { callsOf } from '#data/alarms/life';
import { holdTurn } from '#data/alarms/turn';
import { inTransaction, type Transaction } from '#data/transaction';
import { type CallForHelp, callForHelpRequest } from '#shape/alarms/by-hand';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';
import { definedAlarms } from './defined-alarms';
import { Doings } from './doings';

export const callForHelpShape = callForHelpRequest;

/** What came of calling for help. */
export interface Called {
  site: string;
  /** The time that the alarm was raised. */
  occurrence: string;
  /** Names of those who are being told; what none are, has to be said by telephone. */
  told: string[];
  /** Whether it had been called already: nobody is called twice for it. */
  isRepeat: boolean;
}

/**
 * Raises an alarm by hand: somebody saw what no sensor reads, and calls for help. It is answered, escalated and kept as any
 * other, and it is over once a person says that it is right again. Sent twice it is called once.
 *
 * @param seenAt   when it was seen, where it could not be sent at once; now when left out
 */
export async function callForHelp(
  who: Who,
  typed: CallForHelp,
  seenAt: Date | null = null,
): Promise<Result<Called, Refusal>> {
  const found = await siteFor(who, 'call-for-help', typed.site);
  if (!found.ok) return found;
  const { id: siteId, key: site } = found.value;
  const at = now();
  const done = await inTransaction(async (tx) => {
    const revision = await holdTurn(tx, siteId);
    const defined = revision === null ? null : await definedAlarms(tx, siteId, revision);
    const alarm = defined && (await handAlarm(tx, siteId, who, typed));
    if (!(defined && alarm)) return refused({ why: 'not-found' as const, what: 'system' as const });
    if (!(await addByHand(tx, siteId, alarm, at))) return await calledBefore(tx, siteId, who, typed.call);
    const doings = await Doings.begin(tx, siteId, defined, at);
    const occurrence = doings.raiseByHand(alarm, (seenAt ?? at).getTime(), who.id);
    await doings.tell();
    await doings.keep();
    return ok({ occurrence, isRepeat: false });
  });
  if (!done.ok) return done;
  const { occurrence, isRepeat } = done.value;
  const accounts = [...new Set((await callsOf(siteId, [occurrence])).map(({ accountId }) => accountId))];
  const names = await accountNames(accounts);
  return ok({ site, occurrence, isRepeat, told: accounts.map((account) => names.get(account) ?? account) });
}

async function calledBefore(tx: Transaction, siteId: string, who: Who, call: string) {
  const before = await findByHand(tx, siteId, call);
  return before?.by === who.id
    ? ok({ occurrence: before.occurrence, isRepeat: true })
    : refused({ why: 'conflict' as const, now: 'This belongs to another alarm already.' });
}

async function handAlarm(
  tx: Transaction,
  siteId: string,
  who: Who,
  { call, system, what, saw, where, round }: CallForHelp,
): Promise<HandAlarm | null> {
  const systemId = await systemIdOf(tx, siteId, system);
  if (systemId === null) return null;
  const kept = {
    ...{ key: 'by-hand', name: what, delayS: 0, deadBand: 0, answeredBy: 'rota' as const },
    on: { kind: 'by-hand' as const, saw, where, by: who.id, round },
    priority: { level: 'high' as const, why: 'Somebody called for help.' },
  };
  return { id: call, systemId, definition: kept, kept };
}
