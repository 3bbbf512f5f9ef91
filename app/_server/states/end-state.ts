import 'server-only';
import { ok, refused } from '#core/result';
import { answerProofs } from '#core/states/answered';
import { signaturesAsked } from '#core/states/signing';
import { hasHandsIn } from '#core/states/state-end';
import { newestReadings } from '#data/readings/newest';
import { endState } from '#data/states/change-state';
import { type EndRequest, endRequest } from '#shape/states/requests';
import type { Who } from '../gate/who';
import { type Changed, changeStates } from './change-states';
import { askSignatures } from './ask-signatures';
import { heldRun } from './held-run';
import { provedNow } from './proved-now';

export const endStateShape = endRequest;

/**
 * Ends a state. Every proof is shown by a reading, or seen by whoever ends it; against what a reading contradicts it ends only
 * with the reason. Where hands were in the water, whoever ends it says what they saw.
 */
export async function endStateOf(who: Who, request: EndRequest): Promise<Changed> {
  const { entry, run, note = '', proofs: said } = request;
  return await changeStates(who, request, async (held) => {
    const found = await heldRun(held, run);
    if (!found.ok) return found;
    const { tx, place, at } = held;
    const { state, until, begunAt } = found.value;
    const siteId = place.entry.id;
    const newest = (await newestReadings(siteId, [place.systemId], tx)).get(place.systemId);
    const lines = provedNow(place.system, state, newest, { begunAt, at });
    const { kept, missing } = answerProofs(lines, said);
    const faults = missing.map(({ key, message }) => ({ path: `proof.${key}`, message }));
    if (note === '' && hasHandsIn(state))
      faults.push({ path: 'note', message: 'must say what you saw: that everything runs again is not taken on trust' });
    if (faults.length > 0) return refused({ why: 'invalid', faults });
    const act = { id: entry, run, systemId: place.systemId, state, at, by: who.id, note: note || null };
    await endState(tx, siteId, { ...act, detail: { proofs: kept } });
    const body = { by: who.id, system: place.systemId, state, run, until: until.toISOString() };
    const second = signaturesAsked(place.system, state, 'ended');
    return ok([
      { kind: 'state-ended', body: { ...body, proofs: kept, ...(note && { note }) } },
      ...(await askSignatures(tx, siteId, second, { ...act, about: entry })),
    ]);
  });
}
