import 'server-only';
import type { z } from 'zod';
import { ok, type Result, refused } from '#core/result';
import { addCallOutEvent } from '#data/call-outs/call-outs';
import { news } from '#data/news';
import { appendRecords } from '#data/records/append-records';
import { inTransaction } from '#data/transaction';
import { wake } from '#data/wake';
import { extendCallOutRequest } from '#shape/call-outs/requests';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { callOutAtHand } from './call-out-at-hand';

export const extendCallOutShape = extendCallOutRequest;

/**
 * Takes more time, from now on: whoever went in alone, or the person they named, who spoke to them. Calls that were made
 * meanwhile end with it.
 */
export async function extendCallOut(
  who: Who,
  request: z.output<typeof extendCallOutShape>,
): Promise<Result<{ site: string }, Refusal>> {
  const found = await callOutAtHand(who, request);
  if (!found.ok) return found;
  const { site, callOut, standing, asks } = found.value;
  if (!(asks.isOwn || asks.isNamed)) return refused({ why: 'not-allowed' });
  const at = now();
  const untilAt = new Date(at.getTime() + request.minutes * 60_000);
  await inTransaction(async (tx) => {
    const event = { kind: 'extended' as const, again: standing.again + 1, step: 0, at, by: who.id, untilAt };
    if (!(await addCallOutEvent(tx, callOut, event))) return;
    const body = { by: who.id, callOut: callOut.id, account: callOut.accountId, until: untilAt.toISOString() };
    await appendRecords(tx, site.id, [{ kind: 'call-out-extended', body }], at);
    await wake(tx, 'call-outs-due', {}, { key: `call-out ${callOut.id}`, maxAttempts: 1, runAt: untilAt });
    await news(tx, site.id, 'alarms');
  });
  return ok({ site: request.site });
}
