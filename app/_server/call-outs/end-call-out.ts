import 'server-only';
import type { z } from 'zod';
import { ok, type Result, refused } from '#core/result';
import { addCallOutEvent } from '#data/call-outs/call-outs';
import { news } from '#data/news';
import { appendRecords } from '#data/records/append-records';
import { inTransaction } from '#data/transaction';
import { endCallOutRequest } from '#shape/call-outs/requests';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { callOutAtHand } from './call-out-at-hand';

export const endCallOutShape = endCallOutRequest;

/**
 * Says that somebody is back and safe: they themselves, the person they named, or one who was called for it, who says how they
 * know. Nothing else ends it, no time and no other alarm.
 */
export async function endCallOut(
  who: Who,
  request: z.output<typeof endCallOutShape>,
): Promise<Result<{ site: string }, Refusal>> {
  const found = await callOutAtHand(who, request);
  if (!found.ok) return found;
  const { site, callOut, asks } = found.value;
  if (!(asks.isOwn || asks.isNamed || asks.isCalled)) return refused({ why: 'not-allowed' });
  const note = request.note === undefined || request.note === '' ? {} : { note: request.note };
  if (!(asks.isOwn || 'note' in note))
    return refused({ why: 'invalid', faults: [{ path: 'note', message: 'must say how you know that they are safe' }] });
  const at = now();
  await inTransaction(async (tx) => {
    if (!(await addCallOutEvent(tx, callOut, { kind: 'back', again: 0, step: 0, at, by: who.id, ...note }))) return;
    const body = { by: who.id, callOut: callOut.id, account: callOut.accountId, ...note };
    await appendRecords(tx, site.id, [{ kind: 'call-out-back', body }], at);
    await news(tx, site.id, 'alarms');
  });
  return ok({ site: request.site });
}
