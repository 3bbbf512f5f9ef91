import 'server-only';
import type { z } from 'zod';
import { OPERATING_STATES, type System } from '#core/facility/system';
import type { Schedule } from '#core/rounds/schedule';
import { ok, type Result } from '#core/result';
import { type Asked, askedBy } from '#core/states/effective';
import type { Begun } from '#core/states/state-end';
import { accountNames } from '#data/accounts/names';
import { stateEvents } from '#data/states/change-state';
import { newId } from '#data/new-id';
import { listTimed } from '#data/states/timed';
import { statesBegun } from '#data/states/states';
import { systemPlace } from '#shape/reviews/case-place';
import { now } from '../clock';
import { dayIn } from '../local-day';
import { may } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { findPlace } from '../reviews/find-place';
import { choiceOf, type StateChoice } from './state-choice';
import { type StateLine, stateLines } from './state-lines';

/** Something that was done with a state. */
export interface StateEventLine {
  id: string;
  state: Begun;
  kind: string;
  at: string;
  by: string;
  until: string | null;
  note: string | null;
}

/** The states of one system. */
export interface SystemStates {
  site: { key: string; name: string; zone: string };
  system: { key: string; name: string };
  lines: StateLine[];
  /** States it is not in. */
  choices: StateChoice[];
  events: StateEventLine[];
  equipment: string[];
  /** What the plans ask while these states are in force, the most protective of each. */
  asked: Asked[];
  /** What begins by the clock. */
  timed: { id: string; state: Begun; schedule: Schedule; lastsMin: number }[];
  timedEntry: string;
  /** ISO date at the site. */
  today: string;
  maySet: boolean;
  mayTime: boolean;
  mayAuthorise: boolean;
}

export const getStatesShape = systemPlace;

/** Events that are shown. */
const SHOWN = 50;

/** The states one system is in, those it can be put into, and what was done last. */
export async function getStates(
  who: Who,
  { site, system: key }: z.output<typeof getStatesShape>,
): Promise<Result<SystemStates, Refusal>> {
  const place = await findPlace(who, site, key);
  if (!place.ok) return place;
  const { entry, system, systemId, stored } = place.value;
  const at = now();
  const [begun, events] = await Promise.all([statesBegun([entry.id], at), stateEvents(entry.id, systemId, SHOWN)]);
  const runs = begun.filter((run) => run.system.id === systemId);
  const states = runs.filter(({ isOver }) => !isOver).map(({ state }) => state);
  const names = await accountNames(events.map(({ by }) => by));
  return ok({
    site: { key: entry.key, name: entry.name, zone: entry.zone },
    system: { key, name: system.name },
    lines: await stateLines(runs, stored.facility.systems, { siteId: entry.id, at }),
    choices: choicesOf(system, new Set(states)),
    events: events.map(({ id, state, kind, at, by, until, note }) => ({
      ...{ id, state, kind, note },
      at: at.toISOString(),
      by: names.get(by) ?? by,
      until: until?.toISOString() ?? null,
    })),
    equipment: [...new Set(system.equipment.map(({ type }) => type))],
    asked: askedBy(system, states),
    timed: (await listTimed([entry.id]))
      .filter((one) => one.systemId === systemId)
      .map(({ id, state, schedule, lastsMin }) => ({ id, state, schedule, lastsMin })),
    today: dayIn(entry.zone, at),
    timedEntry: newId(),
    maySet: may(who, 'set-state', site),
    mayTime: may(who, 'describe', site),
    mayAuthorise: may(who, 'authorise-state', site),
  });
}

function choicesOf(system: System, inForce: ReadonlySet<Begun>): StateChoice[] {
  const all = OPERATING_STATES.filter((state): state is Begun => state !== 'normal' && !inForce.has(state));
  return all.map((state) => choiceOf(system, state)).sort((a, b) => Number(b.isDescribed) - Number(a.isDescribed));
}
