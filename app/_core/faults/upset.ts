/**
 * What this room knows: what can fail, how, and what that changes in a machine; one failure mode a file.
 * What it leaves out: what the water makes of it (`simulate`) and whether anybody comes in time (`review`).
 * Where the numbers come from: the catalogue of failure modes of the trade, each with its source.
 */
import type { Health } from '../simulate/device';

/** How a probe lies: hanging in the air, silent, stuck at a value, or shifted by one (in its own unit). */
export type ProbeFault =
  | { as: 'air' }
  | { as: 'lost' }
  | { as: 'stuck'; value: number }
  | { as: 'shifted'; by: number };

/** Everything that is not as it should be. A fault fills it in; the machine is built from the description and this. */
export interface Upset {
  health: Map<string, Health>;
  probes: Map<string, ProbeFault>;
  deadCircuits: Set<string>;
  utilityDown: boolean;
  generatorFails: boolean;
  blockedOverflows: Set<string>;
  /** Equipment whose waste stands open. */
  openWaste: Set<string>;
  deadMonitors: Set<string>;
  /** The operating state that was entered is never ended by whoever should. */
  stateNeverEnds: boolean;
  /** Nothing fails: the state alone is looked at. */
  stateAlone: boolean;
  /** m of level added to the sump by hand. */
  sumpRaised: number;
}

/** Nothing wrong at all. */
export function noUpset(): Upset {
  return {
    health: new Map(),
    probes: new Map(),
    deadCircuits: new Set(),
    utilityDown: false,
    generatorFails: false,
    blockedOverflows: new Set(),
    openWaste: new Set(),
    deadMonitors: new Set(),
    stateNeverEnds: false,
    stateAlone: false,
    sumpRaised: 0,
  };
}
