import 'server-only';
import type { z } from 'zod';
import type { OxygenWithout } from '#core/review/oxygen-without';
import { ok, type Result } from '#core/result';
import { mayStopAir } from '#core/states/stops-air';
import type { Begun } from '#core/states/state-end';
import { statesBegun } from '#data/states/states';
import { stateFormPlace } from '#shape/states/requests';
import { now } from '../clock';
import { may } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { findPlace } from '../reviews/find-place';
import { choiceOf, type StateChoice } from './state-choice';
import { oxygenOf } from './oxygen-of';
import { type StateLine, stateLines } from './state-lines';

/** The page of one state of one system, which a label leads to: it is begun there, or ended. */
export interface StateForm {
  site: { key: string; name: string; zone: string };
  system: { key: string; name: string };
  state: Begun;
  /** While it is in force, or a device ended it. */
  line: StateLine | null;
  /** While it can be begun. */
  choice: StateChoice | null;
  /** Of a state that stops what brings oxygen in. */
  oxygen: OxygenWithout | null;
  equipment: string[];
  maySet: boolean;
  mayAuthorise: boolean;
}

export const getStateFormShape = stateFormPlace;

/** One state of one system: to begin it, or to end it. Asking begins nothing. */
export async function getStateForm(
  who: Who,
  { site, system: key, state }: z.output<typeof getStateFormShape>,
): Promise<Result<StateForm, Refusal>> {
  const place = await findPlace(who, site, key);
  if (!place.ok) return place;
  const { entry, system, systemId, stored } = place.value;
  const at = now();
  const runs = (await statesBegun([entry.id], at)).filter((run) => run.system.id === systemId && run.state === state);
  const [line = null] = await stateLines(runs, stored.facility.systems, { siteId: entry.id, at });
  const canBegin = line === null || line.isOver;
  return ok({
    site: { key: entry.key, name: entry.name, zone: entry.zone },
    system: { key, name: system.name },
    state,
    line,
    choice: canBegin ? choiceOf(system, state) : null,
    oxygen: canBegin && mayStopAir(system, state) ? oxygenOf(place.value, state) : null,
    equipment: [...new Set(system.equipment.map(({ type }) => type))],
    maySet: may(who, 'set-state', site),
    mayAuthorise: may(who, 'authorise-state', site),
  });
}
