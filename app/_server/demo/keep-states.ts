import 'server-only';
import { endsItself } from '#core/states/state-end';
import { beginState, endState, noteState, type StateAct } from '#data/states/change-state';
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
  if (endedMs === null) {
    if (state === 'treatment') await letGoOn(telling, act, fromMs);
    return;
  }
  await endState(tx, siteId, { ...act, id: idFor(endedMs, run, 'ended'), at: new Date(endedMs), note: SEEN });
  tell(telling, endedMs, 'state-ended', { ...body, note: SEEN });
}

/** Hours before now at which a lead looked at a treatment and let it go on. */
const LOOKED_H = 3;

async function letGoOn(telling: Telling, act: Omit<StateAct, 'id' | 'at' | 'note'>, fromMs: number): Promise<void> {
  const { tx, siteId, past, accountOf } = telling;
  const atMs = past.untilMs - LOOKED_H * 3_600_000;
  const lead = past.facility.people.find(({ role }) => role !== 'viewer' && role !== 'aquarist');
  if (!lead || atMs <= fromMs) return;
  const by = accountOf(lead.key);
  const { run, systemId, state } = act;
  const note = 'Eats and breathes as it should; oxygen and ammonia read.';
  const event = { run, systemId, state, by, id: idFor(atMs, run, 'authorised'), at: new Date(atMs), note };
  await noteState(tx, siteId, { ...event, kind: 'authorised' });
  tell(telling, atMs, 'state-authorised', { by, system: systemId, state, run, note });
}
