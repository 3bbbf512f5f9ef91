import 'server-only';
import { ok, type Result, refused } from '#core/result';
import { addAnimalWatch, findAnimalWatch } from '#data/handover/animal-watches';
import { newId } from '#data/new-id';
import { news } from '#data/news';
import { appendRecords } from '#data/records/append-records';
import { findSignedLook } from '#data/rounds/signatures';
import { askSignature, findSignature } from '#data/states/signatures';
import { findLook } from '#data/states/watched';
import { holdSite } from '#data/sites';
import { addTakenBack, takenBack } from '#data/taken-back';
import { inTransaction, type Transaction } from '#data/transaction';
import { type TakeBackRequest, takeBackRequest } from '#shape/rounds/take-back-request';
import { now } from '../clock';
import { may } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';

export const takeBackShape = takeBackRequest;

/** Whose word it is, and what the record says of where it was given. */
interface Said {
  by: string;
  body: Record<string, string>;
  /** What follows once it no longer counts. */
  after?: (tx: Transaction, siteId: string, at: Date) => Promise<void>;
}

/**
 * Takes back a second look at a round, a look after a state, a second signature, or the end of a watch of animals: by whoever gave
 * it, or a lead. What was said stays, with the reason, and counts no longer: it is waited for again. What is sent twice is done once.
 */
export async function takeBack(who: Who, request: TakeBackRequest): Promise<Result<{ site: string }, Refusal>> {
  const { site: key, what, about, reason } = request;
  const allowed = await siteFor(who, 'walk', key);
  if (!allowed.ok) return allowed;
  const site = allowed.value;
  const at = now();
  return await inTransaction(async (tx): Promise<Result<{ site: string }, Refusal>> => {
    await holdSite(tx, site, at);
    const said = await FIND[what](tx, site.id, about);
    if (!said) return refused({ why: 'not-found', what: 'signature' });
    if (said.by !== who.id && !may(who, 'second-look', key))
      return refused({ why: 'conflict', now: 'What somebody else said is taken back by them, or by a lead.' });
    const before = (await takenBack(site.id, what, [about], tx)).get(about);
    if (before?.by === who.id) return ok({ site: key });
    if (before) return refused({ why: 'conflict', now: 'Somebody else has taken this back already.' });
    await addTakenBack(tx, site.id, { what, about, at, by: who.id, reason });
    await said.after?.(tx, site.id, at);
    const body = { by: who.id, what, about, reason, ...said.body };
    await appendRecords(tx, site.id, [{ kind: 'look-taken-back', body }], at);
    await news(tx, site.id, what === 'second-look' ? 'rounds' : 'states');
    return ok({ site: key });
  });
}

type Find = (tx: Transaction, siteId: string, about: string) => Promise<Said | null>;

const FIND: Readonly<Record<TakeBackRequest['what'], Find>> = {
  'second-look': async (tx, siteId, about) => {
    const found = await findSignedLook(tx, siteId, about);
    return found && { by: found.by, body: { round: found.round } };
  },
  'state-look': async (tx, siteId, about) => {
    const found = await findLook(tx, siteId, about);
    return found && { by: found.by, body: { system: found.systemId, run: found.run } };
  },
  'second-signature': async (tx, siteId, about) => {
    const found = await findSignature(tx, siteId, about);
    if (!found?.given) return null;
    const { given: _, taken: _taken, id: _id, ...asked } = found;
    return {
      by: found.given.by,
      body: { asked: about, ...(found.systemId && { system: found.systemId }) },
      // It is wanted again, of whoever did it.
      after: async (within, site, at) => await askSignature(within, site, { ...asked, id: newId(), at }),
    };
  },
  'animal-watch-end': async (tx, siteId, about) => {
    const found = await findAnimalWatch(tx, siteId, about);
    if (!found || found.endedBy === null) return null;
    const { endedBy: by, ...watch } = found;
    return {
      by,
      body: { watch: about, system: watch.systemId },
      // They are watched again, by whom, since when and until when they were.
      after: async (within, site) => await addAnimalWatch(within, site, { ...watch, id: newId() }),
    };
  },
};
