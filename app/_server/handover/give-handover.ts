import 'server-only';
import { countAbnormal } from '#core/handover/shown';
import { ok, type Result, refused } from '#core/result';
import { addHandover, findHandover } from '#data/handover/handovers';
import { news } from '#data/news';
import { appendRecords } from '#data/records/append-records';
import { inTransaction } from '#data/transaction';
import { type GiveRequest, giveRequest } from '#shape/handover/requests';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { findStoredSite } from '../reviews/find-stored-site';
import { digestOf } from './digest';
import { gatherShown } from './gather';

export const giveHandoverShape = giveRequest;

/**
 * Hands a site over: keeps what stands, as whoever gives it has just read it. Where something has changed since their page was
 * shown, nothing is kept: they read it again first. What is sent twice is given once.
 */
export async function giveHandover(who: Who, request: GiveRequest): Promise<Result<{ site: string }, Refusal>> {
  const { site, entry: id, print, note = '' } = request;
  const found = await findStoredSite(who, 'hand-over', site);
  if (!found.ok) return found;
  const siteId = found.value.entry.id;
  const at = now();
  const shown = await gatherShown(found.value, at);
  const digest = digestOf(shown);
  return await inTransaction(async (tx): Promise<Result<{ site: string }, Refusal>> => {
    const before = await findHandover(siteId, id, tx);
    if (before?.by === who.id) return ok({ site });
    if (before) return refused({ why: 'not-found', what: 'handover' });
    if (digest !== print)
      return refused({ why: 'conflict', now: 'What stands has changed since this page was shown. Read it again.' });
    await addHandover(tx, siteId, { id, at, by: who.id, note: note || null, shown, digest, taken: null });
    const body = { by: who.id, handover: id, digest, abnormal: countAbnormal(shown), ...(note && { note }) };
    await appendRecords(tx, siteId, [{ kind: 'handover-given', body }], at);
    await news(tx, siteId, 'states');
    return ok({ site });
  });
}
