import 'server-only';
import type { z } from 'zod';
import { ok, type Result, refused } from '#core/result';
import { addCallOutEvent } from '#data/call-outs/call-outs';
import { news } from '#data/news';
import { appendRecords } from '#data/records/append-records';
import { inTransaction } from '#data/transaction';
import { callOutPlace } from '#shape/call-outs/requests';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { callOutAtHand } from './call-out-at-hand';

export const seeToCallOutShape = callOutPlace;

/** Says that one looks after somebody who is not back: the next are called later, unless a person says that they are. */
export async function seeToCallOut(
  who: Who,
  request: z.output<typeof seeToCallOutShape>,
): Promise<Result<{ site: string }, Refusal>> {
  const found = await callOutAtHand(who, request);
  if (!found.ok) return found;
  const { site, callOut, standing, asks } = found.value;
  // Whoever is missing cannot be the one who looks for them.
  if (asks.isOwn) return refused({ why: 'not-allowed' });
  if (standing.state !== 'overdue') return refused({ why: 'conflict', now: 'they are not expected back yet' });
  const at = now();
  const { again, step } = standing;
  await inTransaction(async (tx) => {
    if (!(await addCallOutEvent(tx, callOut, { kind: 'seen-to', again, step, at, by: who.id }))) return;
    const body = { by: who.id, callOut: callOut.id, account: callOut.accountId };
    await appendRecords(tx, site.id, [{ kind: 'call-out-seen-to', body }], at);
    await news(tx, site.id, 'alarms');
  });
  return ok({ site: request.site });
}
