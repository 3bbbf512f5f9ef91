import 'server-only';
import { ok, refused } from '#core/result';
import { hasHandsIn } from '#core/states/state-end';
import { endState } from '#data/states/change-state';
import { type EndRequest, endRequest } from '#shape/states/requests';
import type { Who } from '../gate/who';
import { type Changed, changeStates } from './change-states';
import { heldRun } from './held-run';

export const endStateShape = endRequest;

/** Ends a state. Where hands were in the water, whoever ends it says what they saw. */
export async function endStateOf(who: Who, request: EndRequest): Promise<Changed> {
  const { entry, run, note = '' } = request;
  return await changeStates(who, request, async (held) => {
    const found = await heldRun(held, run);
    if (!found.ok) return found;
    const { tx, place, at } = held;
    const { state, until } = found.value;
    if (note === '' && hasHandsIn(state))
      return refused({
        why: 'invalid',
        faults: [{ path: 'note', message: 'must say what you saw: that everything runs again is not taken on trust' }],
      });
    await endState(tx, place.entry.id, {
      id: entry,
      run,
      systemId: place.systemId,
      state,
      at,
      by: who.id,
      note: note || null,
    });
    const body = { by: who.id, system: place.systemId, state, run, until: until.toISOString() };
    return ok([{ kind: 'state-ended', body: { ...body, ...(note && { note }) } }]);
  });
}
