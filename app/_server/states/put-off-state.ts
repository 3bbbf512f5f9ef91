import 'server-only';
import { ok, refused } from '#core/result';
import { putOffState } from '#data/states/change-state';
import { type PutOffRequest, putOffRequest } from '#shape/states/requests';
import type { Who } from '../gate/who';
import { type Changed, changeStates } from './change-states';
import { heldRun } from './held-run';

export const putOffStateShape = putOffRequest;

/** Puts the end of a state off: so long from now, and why. */
export async function putOffStateOf(who: Who, request: PutOffRequest): Promise<Changed> {
  const { entry, run, lastsMin, note } = request;
  return await changeStates(who, request, async (held) => {
    const found = await heldRun(held, run);
    if (!found.ok) return found;
    const { tx, place, at } = held;
    const { state, until: was } = found.value;
    const until = new Date(at.getTime() + lastsMin * 60_000);
    if (until <= was)
      return refused({
        why: 'invalid',
        faults: [{ path: 'lasts', message: 'must reach beyond the end there is now' }],
      });
    const act = { id: entry, run, systemId: place.systemId, state, at, by: who.id, note, until };
    await putOffState(tx, place.entry.id, act);
    const body = { by: who.id, system: place.systemId, state, run, was: was.toISOString(), until: until.toISOString() };
    return ok([{ kind: 'state-put-off', body: { ...body, note } }]);
  });
}
