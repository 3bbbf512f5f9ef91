import 'server-only';
import type { z } from 'zod';
import { ok, type Result, refused } from '#core/result';
import { addCallOut, openCallOuts } from '#data/call-outs/call-outs';
import { waysOf } from '#data/calls/ways';
import { findOccurrence } from '#data/alarms/told';
import { news } from '#data/news';
import { appendRecords } from '#data/records/append-records';
import { inTransaction } from '#data/transaction';
import { wake } from '#data/wake';
import { beginCallOutRequest } from '#shape/call-outs/requests';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';

export const beginCallOutShape = beginCallOutRequest;

/**
 * Says that somebody goes in alone, and when they will be back. Unless a person says so in time, others are called.
 *
 * @returns   the id; `conflict` for whoever is in alone already
 */
export async function beginCallOut(
  who: Who,
  { site: key, place, minutes, named, occurrence }: z.output<typeof beginCallOutShape>,
): Promise<Result<{ site: string; callOut: string }, Refusal>> {
  const found = await siteFor(who, 'acknowledge', key);
  if (!found.ok) return found;
  const siteId = found.value.id;
  if (named !== undefined && !(await waysOf(siteId)).some(({ account }) => account === named))
    return refused({ why: 'not-found', what: 'person' });
  if (occurrence !== undefined && !(await findOccurrence(siteId, occurrence)))
    return refused({ why: 'not-found', what: 'alarm' });
  if ((await openCallOuts(siteId)).some(({ accountId }) => accountId === who.id))
    return refused({ why: 'conflict', now: 'you are in alone already: say that you are back, or take more time' });
  const at = now();
  const untilAt = new Date(at.getTime() + minutes * 60_000);
  const callOut = await inTransaction(async (tx) => {
    const whom = { accountId: who.id, namedId: named ?? null, occurrenceId: occurrence ?? null };
    const id = await addCallOut(tx, siteId, { ...whom, place, begunAt: at, untilAt });
    const body = {
      by: who.id,
      callOut: id,
      place,
      until: untilAt.toISOString(),
      ...(named === undefined ? {} : { named }),
    };
    await appendRecords(tx, siteId, [{ kind: 'call-out-begun', body }], at);
    await wake(tx, 'call-outs-due', {}, { key: `call-out ${id}`, maxAttempts: 1, runAt: untilAt });
    await news(tx, siteId, 'alarms');
    return id;
  });
  return ok({ site: key, callOut });
}
