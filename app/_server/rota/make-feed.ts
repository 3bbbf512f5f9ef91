import 'server-only';
import type { z } from 'zod';
import { ok, type Result, refused } from '#core/result';
import { endFeed, feedsOf, makeFeed, personOf } from '#data/rota/feeds';
import { appendRecords } from '#data/records/append-records';
import { inTransaction } from '#data/transaction';
import { feedEnd, feedRequest } from '#shape/rota/feed';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';
import { feedLink } from './feed-link';

export const makeFeedShape = feedRequest;
export const endFeedShape = feedEnd;

/** Addresses somebody may have at a site: one for each device, and some to spare. */
const MOST = 10;

/** Makes an address for the calendar of whoever asks. It is told once. */
export async function makeFeedFor(
  who: Who,
  { site, scope }: z.output<typeof makeFeedShape>,
): Promise<Result<{ address: string; site: string }, Refusal>> {
  const found = await siteFor(who, 'see', site);
  if (!found.ok) return found;
  const { id: siteId } = found.value;
  if (scope === 'mine' && (await personOf(siteId, who.id)) === null)
    return refused({
      why: 'conflict',
      now: 'Your account is nobody of this rota yet. An administrator of the site says under People who you are on it; until then, choose everybody’s shifts.',
    });
  const at = now();
  return await inTransaction(async (tx) => {
    if ((await feedsOf(siteId, who.id, tx)).length >= MOST)
      return refused({ why: 'conflict', now: `You have ${MOST} addresses here already: end one first.` });
    const { id, token } = await makeFeed(tx, siteId, { accountId: who.id, scope }, at);
    const body = { by: who.id, account: who.id, feed: id, scope };
    await appendRecords(tx, siteId, [{ kind: 'calendar-made', body }], at);
    return ok({ address: feedLink(siteId, token), site });
  });
}

/** Ends an address of whoever asks: it opens nothing from now on. */
export async function endFeedOf(
  who: Who,
  { site, feed }: z.output<typeof endFeedShape>,
): Promise<Result<{ site: string }, Refusal>> {
  const found = await siteFor(who, 'see', site);
  if (!found.ok) return found;
  const at = now();
  return await inTransaction(async (tx) => {
    if (!(await endFeed(tx, found.value.id, { id: feed, accountId: who.id }, at)))
      return refused({ why: 'not-found', what: 'calendar' });
    const body = { by: who.id, account: who.id, feed };
    await appendRecords(tx, found.value.id, [{ kind: 'calendar-ended', body }], at);
    return ok({ site });
  });
}
