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
  /** Part of its effect that a piece of equipment still has, 0 to 1: heat, flow, gas exchange, nitrification. */
  weakened: Map<string, number>;
  /** Make-up, dosing or supply that runs on by siphon without power until its source is empty. */
  siphoning: Set<string>;
  /** A hole in a tank: m³/s at the running level, and how far down it reaches, m below it. */
  leaks: Map<string, { flow: number; depth: number }>;
  /** Equipment that does not start again by itself once it has been without power. */
  noRestart: Set<string>;
  /** The utility comes back after this long, s; Infinity: not within the horizon. */
  utilityBackS: number;
  /** The generator starts and dies again after this long, s; Infinity: it runs on its fuel. */
  generatorDiesS: number;
  /** Reservoirs that hold nothing. */
  emptyReservoirs: Set<string>;
  /** Practical salinity of what a reservoir holds by mistake. */
  reservoirSalinity: Map<string, number>;
  /** Water put back at the end of a state, or made up from a reservoir, is unlike what it should be. */
  newWater: { salinity?: number; temperatureC?: number; oxidantMgL?: number } | null;
  /** Disinfectant of the mains reaches the water: part of it that nothing takes out, 0 to 1; null: as described. */
  mainsOxidantPasses: number | null;
  /** What a supply or top-off brings is unlike what it should be, by equipment. */
  brings: Map<string, { salinity?: number; temperatureC?: number; oxidantMgL?: number }>;
  /** m³/s of untreated mains water that a hose lets run into a tank. */
  hoses: Map<string, number>;
  /** K by which a thermostat's two set points stand off those of its plan, by equipment. */
  setPointShift: Map<string, number>;
  /** No battery carries its circuit. */
  batteriesFail: boolean;
  /** K that the room is off what is described. */
  roomShiftC: number;
  /** g of feed that falls in at once. */
  feedDumpedG: number;
  /** Alarms that are switched off, shelved or never made, by key. */
  mutedAlarms: Set<string>;
  /** Whoever is called does not answer. */
  nobodyAnswers: boolean;
  /** s by which the clock that runs timed equipment is off. */
  clockOffS: number;
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
    weakened: new Map(),
    siphoning: new Set(),
    leaks: new Map(),
    noRestart: new Set(),
    utilityBackS: Number.POSITIVE_INFINITY,
    generatorDiesS: Number.POSITIVE_INFINITY,
    emptyReservoirs: new Set(),
    reservoirSalinity: new Map(),
    newWater: null,
    mainsOxidantPasses: null,
    brings: new Map(),
    hoses: new Map(),
    setPointShift: new Map(),
    batteriesFail: false,
    roomShiftC: 0,
    feedDumpedG: 0,
    mutedAlarms: new Set(),
    nobodyAnswers: false,
    clockOffS: 0,
    stateAlone: false,
    sumpRaised: 0,
  };
}
