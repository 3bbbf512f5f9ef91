import 'server-only';
import type { ItemAnswer } from '#core/rounds/outbox';
import { ok, type Result } from '#core/result';
import { type SentItem, type SyncRequest, syncRequest } from '#shape/rounds/sync';
import { now } from '../../clock';
import { refusalWords } from '../../gate/refusal-words';
import type { Refusal } from '../../gate/refusal';
import type { Who } from '../../gate/who';
import { findStoredSite, type SiteToday } from '../../reviews/find-stored-site';
import { signRound } from '../sign-round';
import { findWalk } from './find-walk';
import { syncCall } from './sync-call';
import { type MadeAt, syncEntry } from './sync-entry';

export const syncShape = syncRequest;

/** A clock that is off by less tells the time as well as any. */
const CLOCK_SLACK_S = 60;

/**
 * Takes in what was entered where there was no signal, the oldest first, each for itself: what breaks off half-way is sent again,
 * and what is there already is a repeat. Entries keep the time that they were made at by the telephone, and how far its clock is
 * off; one from the time to come counts as made now.
 *
 * @returns   what became of each
 */
export async function sync(who: Who, request: SyncRequest): Promise<Result<{ answers: ItemAnswer[] }, Refusal>> {
  const found = await findStoredSite(who, 'walk', request.site);
  if (!found.ok) return found;
  if (request.account !== who.id)
    return {
      ok: false,
      reason: { why: 'conflict', now: 'Somebody else is signed in now: these wait for whoever entered them.' },
    };
  const receivedAt = now();
  const off = Math.round((Date.parse(request.sentAt) - receivedAt.getTime()) / 1000);
  const clockOffS = Math.abs(off) < CLOCK_SLACK_S ? null : off;
  const answers: ItemAnswer[] = [];
  for (const item of request.items) {
    const at = new Date(Math.min(Date.parse(item.madeAt), receivedAt.getTime()));
    answers.push(await takeOne(who, found.value, item, { at, clockOffS }));
  }
  return ok({ answers });
}

async function takeOne(who: Who, today: SiteToday, item: SentItem, made: MadeAt): Promise<ItemAnswer> {
  if (item.kind === 'call') return await syncCall(who, today.entry, item, made.at);
  const round = await findWalk(who, today, item.walk, made.at);
  if (!round.ok) return { id: item.id, outcome: 'refused', said: refusalWords(round.reason) };
  if (item.kind === 'entry') return await syncEntry(who, today.entry, round.value, item, made);
  const signed = await signRound(who, { site: today.entry.key, round: round.value, note: item.note }, made.at);
  return signed.ok
    ? { id: item.id, outcome: 'stored' }
    : { id: item.id, outcome: 'refused', said: refusalWords(signed.reason) };
}
