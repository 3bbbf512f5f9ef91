/**
 * What this room knows: how a piece of equipment is meant to behave, in fixed layers of authority.
 * What it leaves out: what really happens, which `simulate` works out.
 * Where the numbers come from: the people who wrote the plan.
 */
import type { CarriedOutBy } from '../facility/site';
import type { StateName } from '../facility/system';

/**
 * A plan in its layers, highest authority first: cut-outs, interlocks, action on lost sensing, operating state,
 * regulation. The order is fixed; it cannot be rearranged or scripted.
 */
export interface Plan {
  cutOuts: CutOut[];
  interlocks: Interlock[];
  lostSensing?: LostSensing;
  states: StateLine[];
  regulation: Regulation;
  /** Put into force by the one who wrote it, while nobody else at the site may; absent when somebody else did. */
  ownWord?: OwnWord;
}

/** Why a plan is in force on the word of its author alone. */
export interface OwnWord {
  why: string;
}

/** Hard-wired contact with a probe of its own, in series with everything else. */
export interface CutOut {
  quantity: 'temperature' | 'level';
  /** Tank its own probe sits in. */
  tank: string;
  /** °C, or mm relative to the running level. */
  above?: number;
  below?: number;
  reset: 'manual' | 'automatic';
  safeguard: string;
}

/** Off (or on) while a condition holds. Carried out by a controller it is defeated by a welded contact. */
export interface Interlock {
  when: Condition;
  then: 'off' | 'on';
  by: CarriedOutBy;
  safeguard?: string;
}

/** How the loss of return flow is proved: a flow sensor, the pump's watts, or only the command it was given. */
export type Proof = 'flow' | 'watts' | 'command';

export type Condition =
  | { kind: 'return-lost'; provedBy: Proof }
  | { kind: 'sensor'; sensor: string; above?: number; below?: number };

/** What the equipment does when its own regulating sensor gives nothing usable. */
export interface LostSensing {
  action: 'off' | 'on' | 'hold';
  by: CarriedOutBy;
}

/** What an operating state asks of the equipment. */
export interface StateLine {
  state: Exclude<StateName, 'normal'>;
  then: 'off' | 'on';
  by: CarriedOutBy;
}

/** How several sensors become one value: the only one, the median, the highest, the lowest. */
export type Vote = 'single' | 'median' | 'highest' | 'lowest';

export type Regulation = Always | Never | Thermostat | LevelControl | Hours;

/** Runs all the time (pumps, air). */
export interface Always {
  kind: 'always';
  by: CarriedOutBy;
}

/** Runs only when a person opens or starts it (drain and waste valves). */
export interface Never {
  kind: 'never';
  by: CarriedOutBy;
}

/** Two-point control of temperature; a heater comes on at `low`, a chiller at `high`, °C. */
export interface Thermostat {
  kind: 'thermostat';
  sensors: string[];
  vote: Vote;
  lowC: number;
  highC: number;
  minOnS?: number;
  minOffS?: number;
  by: CarriedOutBy;
}

/** Two-point control of level, mm relative to the running level; runs up from `lowMm` to `highMm`. */
export interface LevelControl {
  kind: 'level';
  sensor: string;
  lowMm: number;
  highMm: number;
  /** Longest single run, minutes; then it locks out until a person resets it. */
  runLimitMin?: number;
  runLimitSafeguard?: string;
  by: CarriedOutBy;
}

/** On between two local times each day, "HH:MM". */
export interface Hours {
  kind: 'hours';
  from: string;
  to: string;
  by: CarriedOutBy;
}
