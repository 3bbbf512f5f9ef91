import 'server-only';
import { ok, refused } from '#core/result';
import { findBegun, findEnd, noteState } from '#data/states/change-state';
import { type AuthoriseRequest, authoriseRequest, type LookRequest, lookRequest } from '#shape/states/requests';
import type { Who } from '../gate/who';
import { type Changed, changeStates } from './change-states';
import { heldRun } from './held-run';

export const lookAfterStateShape = lookRequest;
export const authoriseStateShape = authoriseRequest;

/** Keeps that somebody looked at what is watched after a state, and what they saw. */
export async function lookAfterState(who: Who, request: LookRequest): Promise<Changed> {
  const { entry, run, note } = request;
  return await changeStates(who, request, async ({ tx, place, at }) => {
    const end = await findEnd(tx, place.entry.id, run);
    if (end?.systemId !== place.systemId) return refused({ why: 'not-found', what: 'state' });
    const { state } = end;
    const act = { id: entry, run, systemId: place.systemId, state, at, by: who.id, note };
    await noteState(tx, place.entry.id, { ...act, kind: 'looked' });
    return ok([{ kind: 'state-looked', body: { by: who.id, system: place.systemId, state, run, note } }]);
  });
}

/** A lead lets a treatment go on for another day, having looked at the animals and the water. */
export async function authoriseState(who: Who, request: AuthoriseRequest): Promise<Changed> {
  const { entry, run, note = '' } = request;
  return await changeStates(
    who,
    request,
    async (held) => {
      const found = await heldRun(held, run);
      if (!found.ok) return found;
      const { tx, place, at } = held;
      const siteId = place.entry.id;
      const { state } = await findBegun(tx, siteId, run);
      if (state !== 'treatment') return refused({ why: 'not-found', what: 'state' });
      const act = { id: entry, run, systemId: place.systemId, state, at, by: who.id, note: note || null };
      await noteState(tx, siteId, { ...act, kind: 'authorised' });
      const body = { by: who.id, system: place.systemId, state, run, ...(note && { note }) };
      return ok([{ kind: 'state-authorised', body }]);
    },
    'authorise-state',
  );
}
