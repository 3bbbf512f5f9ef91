import 'server-only';
import type { StateName } from '#core/facility/system';
import { ok, refused, type Result } from '#core/result';
import { accountNames } from '#data/accounts/names';
import { news } from '#data/news';
import { appendRecords } from '#data/records/append-records';
import type { RecordEntry } from '#data/records/seal';
import { findEvent } from '#data/states/change-state';
import { holdSystem, type OpenState, openStates } from '#data/states/states';
import { inTransaction, type Transaction } from '#data/transaction';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { findPlace, type Place } from '../reviews/find-place';
import { siteFor } from '../gate/site-for';
import { momentSaid } from '../moment-said';

/** A system held by a transaction, with the states it is in. */
export interface HeldSystem {
  tx: Transaction;
  place: Place;
  open: OpenState[];
  at: Date;
}

/** What changing a state answers: where it was. */
export type Changed = Result<{ site: string; system: string }, Refusal>;

/** What the work of a change answers: what the record gains, or who was quicker. */
export type Done = Result<RecordEntry[], Refusal | QuickerThan>;

/** Somebody else was quicker: what they did, to be put into words. */
export interface QuickerThan {
  why: 'quicker';
  did: string;
  by: string;
  at: Date;
}

/**
 * Changes the states of a system, with the system held, so that of two people one is first and the other is told. What is
 * sent twice is done once.
 *
 * @param entry   id of the event, drawn when the form was shown
 * @param work    makes the change
 * @param verb    what whoever asks must be allowed to do
 */
export async function changeStates(
  who: Who,
  { site, system, entry }: { site: string; system: string; entry: string },
  work: (held: HeldSystem) => Promise<Done>,
  verb: 'set-state' | 'authorise-state' = 'set-state',
): Promise<Changed> {
  const allowed = await siteFor(who, verb, site);
  if (!allowed.ok) return allowed;
  const place = await findPlace(who, site, system);
  if (!place.ok) return place;
  const at = now();
  const done = await inTransaction(async (tx) => {
    const siteId = place.value.entry.id;
    const held = await holdSystem(tx, siteId, system);
    if (held?.id !== place.value.systemId) return refused({ why: 'not-found', what: 'system' } as const);
    const before = await findEvent(tx, siteId, entry);
    if (before && before.by === who.id && before.systemId === held.id) return ok<RecordEntry[]>([]);
    // An id that stands for something else: the form was not made here.
    if (before) return refused({ why: 'not-found', what: 'state' } as const);
    const result = await work({ tx, place: place.value, open: await openStates(tx, siteId, held.id), at });
    if (result.ok && result.value.length > 0) {
      await appendRecords(tx, siteId, result.value, at);
      await news(tx, siteId, 'states');
    }
    return result;
  });
  if (done.ok) return ok({ site, system });
  return refused(done.reason.why === 'quicker' ? await quicker(done.reason, place.value) : done.reason);
}

/** A state as it stands in a sentence: "the water change". */
export function stateSaid(state: StateName): string {
  return `the ${state.replaceAll('-', ' ')}`;
}

async function quicker({ did, by, at }: QuickerThan, { entry }: Place): Promise<Refusal> {
  const name = (await accountNames([by])).get(by) ?? by;
  return { why: 'conflict', now: `${name} ${did} at ${momentSaid(entry.zone, at, now())}.` };
}
