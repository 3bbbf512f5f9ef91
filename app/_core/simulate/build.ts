import type { ResolvedSystem, ResolvedTank } from '../equipment/resolved';
import type { Facility } from '../facility/facility';
import type { Equipment, StateName, System } from '../facility/system';
import type { Upset } from '../faults/upset';
import type { Places } from './build-signals';
import type { Credit } from '../plans/credit';
import type { Supply } from './build-supply';
import type { Knots } from './knots';
import type { Layout } from './layout';
import type { Plant } from './plant';
import type { Watch } from './watch';

/** What was before a moment: a healthy course from a midnight on, and when in it the moment is, s. */
export interface Before {
  knots: Knots;
  atS: number;
}

/** Where a run begins: a moment of the system's normal life. */
export interface Snapshot {
  x: Float64Array;
  /** How that is laid out. */
  layout: Layout;
  /** What each device's regulation said. */
  on: boolean[];
  /** Lowest and highest temperature of each node over a normal day, °C. */
  dayLow: Float64Array;
  dayHigh: Float64Array;
  /** The course it is a moment of; absent: nothing is known of what was before. */
  before?: Before;
}

/** Everything known while a machine is put together. */
export interface Build {
  facility: Facility;
  system: System;
  resolved: ResolvedSystem;
  upset: Upset;
  credited: Credit;
  supply: Supply;
  state: StateName;
  snapshot: Snapshot | null;
  plant: Plant;
  places: Places;
  tanks: ResolvedTank[];
  watches: Watch[];
}

/** What the operating state in force asks of a piece of equipment; null when its plan says nothing of it. */
export function stateNow(build: Build, equipment: Equipment): 'on' | 'off' | null {
  if (build.state === 'normal') return null;
  return equipment.plan.states.find((line) => line.state === build.state)?.then ?? null;
}
