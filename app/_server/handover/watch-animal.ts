import 'server-only';
import { ok, type Result, refused } from '#core/result';
import { addAnimalWatch, endAnimalWatch, findAnimalWatch } from '#data/handover/animal-watches';
import { appendRecords } from '#data/records/append-records';
import { inTransaction } from '#data/transaction';
import {
  type EndWatchRequest,
  endWatchRequest,
  type WatchAnimalRequest,
  watchAnimalRequest,
} from '#shape/handover/requests';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';
import { findPlace } from '../reviews/find-place';

export const watchAnimalShape = watchAnimalRequest;
export const endAnimalWatchShape = endWatchRequest;

/** Puts animals under watch: which, why, and for how many days. What is sent twice is begun once. */
export async function watchAnimal(who: Who, request: WatchAnimalRequest): Promise<Result<{ site: string }, Refusal>> {
  const { site, entry: id, system, what, why, days } = request;
  const allowed = await siteFor(who, 'hand-over', site);
  if (!allowed.ok) return allowed;
  const place = await findPlace(who, site, system);
  if (!place.ok) return place;
  const siteId = allowed.value.id;
  const { systemId } = place.value;
  const at = now();
  const until = new Date(at.getTime() + days * 86_400_000);
  return await inTransaction(async (tx): Promise<Result<{ site: string }, Refusal>> => {
    const before = await findAnimalWatch(tx, siteId, id);
    if (before?.by === who.id) return ok({ site });
    if (before) return refused({ why: 'not-found', what: 'watch' });
    await addAnimalWatch(tx, siteId, { id, systemId, what, why, until, at, by: who.id });
    const body = { by: who.id, system: systemId, watch: id, what, why, until: until.toISOString() };
    await appendRecords(tx, siteId, [{ kind: 'animals-watched', body }], at);
    return ok({ site });
  });
}

/** Ends a watch, and says how it went. */
export async function endWatch(who: Who, request: EndWatchRequest): Promise<Result<{ site: string }, Refusal>> {
  const { site, watch, note } = request;
  const allowed = await siteFor(who, 'hand-over', site);
  if (!allowed.ok) return allowed;
  const siteId = allowed.value.id;
  const at = now();
  return await inTransaction(async (tx): Promise<Result<{ site: string }, Refusal>> => {
    await tx.$queryRaw`SELECT 1 FROM site WHERE id = ${siteId}::uuid FOR NO KEY UPDATE`;
    const found = await findAnimalWatch(tx, siteId, watch);
    if (!found) return refused({ why: 'not-found', what: 'watch' });
    if (found.endedBy === who.id) return ok({ site });
    if (found.endedBy !== null) return refused({ why: 'conflict', now: 'Somebody else has ended this watch already.' });
    await endAnimalWatch(tx, siteId, watch, { at, by: who.id, note });
    const body = { by: who.id, system: found.systemId, watch, what: found.what, note };
    await appendRecords(tx, siteId, [{ kind: 'animals-unwatched', body }], at);
    return ok({ site });
  });
}
