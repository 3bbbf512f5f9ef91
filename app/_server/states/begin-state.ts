import 'server-only';
import { ok, refused } from '#core/result';
import { signaturesAsked } from '#core/states/signing';
import { mayStopAir } from '#core/states/stops-air';
import { endsItself } from '#core/states/state-end';
import { beginState, findBegun } from '#data/states/change-state';
import { type BeginRequest, beginRequest } from '#shape/states/requests';
import type { Who } from '../gate/who';
import { askSignatures } from './ask-signatures';
import { oxygenOf } from './oxygen-of';
import { type Changed, changeStates, stateSaid } from './change-states';

export const beginStateShape = beginRequest;

/** Puts a system into an operating state, with an end. One that it is in already is not begun a second time. */
export async function beginStateOf(who: Who, request: BeginRequest): Promise<Changed> {
  const { entry, state, lastsMin, note = '' } = request;
  return await changeStates(who, request, async ({ tx, place, open, at }) => {
    const siteId = place.entry.id;
    const same = open.find((one) => one.state === state);
    if (same && !(same.endsItself && same.until <= at)) {
      const { by } = await findBegun(tx, siteId, same.run);
      return refused({ why: 'quicker', did: `began ${stateSaid(state)}`, by, at: same.begunAt });
    }
    const until = new Date(at.getTime() + lastsMin * 60_000);
    const act = { id: entry, run: entry, systemId: place.systemId, state, at, by: who.id, note: note || null };
    const oxygen = mayStopAir(place.system, state) ? oxygenOf(place, state) : null;
    await beginState(tx, siteId, {
      ...(oxygen && { detail: { oxygen } }),
      ...act,
      until,
      endsItself: endsItself(place.system, state),
    });
    const body = { by: who.id, system: place.systemId, state, run: entry, until: until.toISOString() };
    const second = signaturesAsked(place.system, state, 'begun');
    return ok([
      { kind: 'state-begun', body: { ...body, ...(note && { note }), ...(oxygen && { oxygen }) } },
      ...(await askSignatures(tx, siteId, second, { ...act, about: entry })),
    ]);
  });
}
