import 'server-only';
import { stateMinOf } from '#core/equipment/defaults';
import { ok, refused } from '#core/result';
import { endsItself } from '#core/states/state-end';
import { answerAsked, findAsked } from '#data/states/asked';
import { beginState, findBegun } from '#data/states/change-state';
import { type AnswerRequest, answerRequest } from '#shape/states/asked-request';
import type { Who } from '../gate/who';
import { type Changed, changeStates, stateSaid } from './change-states';

export const answerAskedShape = answerRequest;

/** Says whether a state that looks as if it had begun has: then it counts from when it looked so. */
export async function answerAskedOf(who: Who, request: AnswerRequest): Promise<Changed> {
  const { asked: id, isSo, entry } = request;
  return await changeStates(who, request, async ({ tx, place, open, at }) => {
    const siteId = place.entry.id;
    const asked = await findAsked(tx, siteId, id);
    if (asked?.systemId !== place.systemId) return refused({ why: 'not-found', what: 'state' });
    const { state, since, answeredBy } = asked;
    if (answeredBy === who.id) return ok([]);
    if (answeredBy !== null) return refused({ why: 'conflict', now: 'Somebody else has answered this already.' });
    const body = { by: who.id, system: place.systemId, state, since: since.toISOString() };
    if (!isSo) {
      await answerAsked(tx, siteId, id, { at, by: who.id, runId: null });
      return ok([{ kind: 'state-not-begun', body }]);
    }
    const same = open.find((one) => one.state === state && !(one.endsItself && one.until <= at));
    if (same) {
      const { by } = await findBegun(tx, siteId, same.run);
      return refused({ why: 'quicker', did: `began ${stateSaid(state)}`, by, at: same.begunAt });
    }
    const described = place.system.states.find(({ name }) => name === state);
    const until = new Date(since.getTime() + (described?.lastsMin?.value ?? stateMinOf(state).value) * 60_000);
    const note = asked.why === 'watts' ? 'told by the watts, and so' : 'due by the clock, and so';
    const act = { id: entry, run: entry, systemId: place.systemId, state, at: since, by: who.id, note };
    await beginState(tx, siteId, { ...act, until, endsItself: endsItself(place.system, state) });
    await answerAsked(tx, siteId, id, { at, by: who.id, runId: entry });
    return ok([{ kind: 'state-begun', body: { ...body, run: entry, until: until.toISOString(), note } }]);
  });
}
