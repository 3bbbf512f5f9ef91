import 'server-only';
import { endsItself } from '#core/states/state-end';
import { beginState, endState } from '#data/states/change-state';
import { idFor } from '../../../seed/past/seeded-id';
import type { HandState } from '../../../seed/past/day-work';
import { onShift } from '../../../seed/past/on-shift';
import { type Telling, tell } from './told';

/** What people write when they end a state with their hands in the water. */
const SEEN = 'Everything runs again: watts and flow as before.';

/** Keeps the states that people put systems into, and ended. */
export async function keepStates(telling: Telling): Promise<void> {
  for (const past of telling.past.systems.values()) for (const state of past.states) await keepState(telling, state);
}

async function keepState(telling: Telling, { system: key, state, fromMs, untilMs, endedMs }: HandState): Promise<void> {
  const { tx, siteId, past, idOf, accountOf } = telling;
  const { facility } = past;
  const system = facility.systems.find((one) => one.key === key);
  if (!system) throw new Error(`There is no system ${key}`);
  const systemId = idOf('system', null, key);
  const run = idFor(fromMs, facility.site.key, key, state);
  const by = accountOf(onShift(facility, fromMs, run));
  const until = new Date(untilMs);
  const act = { run, systemId, state, by };
  const itself = endsItself(system, state);
  await beginState(tx, siteId, { ...act, id: run, at: new Date(fromMs), note: null, until, endsItself: itself });
  const body = { by, system: systemId, state, run, until: until.toISOString() };
  tell(telling, fromMs, 'state-begun', body);
  if (endedMs === null) return;
  await endState(tx, siteId, { ...act, id: idFor(endedMs, run, 'ended'), at: new Date(endedMs), note: SEEN });
  tell(telling, endedMs, 'state-ended', { ...body, note: SEEN });
}
