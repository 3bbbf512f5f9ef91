import type { StateName } from '../facility/system';
import type { Meant } from './meant';

/** What an alarm holds readings to: all that decides whether it is true, and nothing else. Sensors are `system/key`. */
export type Condition = Limits | Silence | Still | Outstayed;

/** A value is held to limits: what a sensor reads, or what follows from it. */
export interface Limits {
  kind: 'limits';
  /** The sensor it is held to; of two, the first. */
  sensor: string;
  /** What is made of the readings before they are compared; absent: nothing, they are compared as they are. */
  of?: Worked;
  /** True above this value, in the sensor's unit. */
  above?: number;
  /** True below this value. */
  below?: number;
  /** Values below this one are not judged: a piece of equipment that draws nothing is off, and may be meant to be. */
  from?: number;
  deadBand: number;
  delayS: number;
  offDelayS: number;
  /** Whether readings come by themselves: then those taken by hand may call and never silence. */
  isCarried: boolean;
}

/** What a value that is held to limits is worked out of. */
export type Worked =
  /** How fast it moves, a unit an hour, against its own running mean of `meanS`. */
  | { kind: 'rate'; meanS: number }
  /** How far it stands from another sensor, either way. */
  | { kind: 'difference'; other: string }
  /** How often it rose above `runsAbove` in the last hour. */
  | { kind: 'starts'; runsAbove: number }
  /** W, with whether the equipment is meant to run: what it draws then tells more. */
  | { kind: 'watts'; meant: Meant };

/** Nothing usable comes from any of these sensors. */
export interface Silence {
  kind: 'silence';
  sensors: string[];
  /** Whether a bad reading is a word as well: it tells nothing of the water, but its gateway is there. */
  anyWord: boolean;
  delayS: number;
  offDelayS: number;
  isCarried: boolean;
}

/** Readings come and do not move. */
export interface Still {
  kind: 'still';
  sensor: string;
  /** How far it may move and count as not moving, in the sensor's unit. */
  within: number;
  delayS: number;
  offDelayS: number;
  isCarried: boolean;
}

/** An operating state lasts too long; it is held to what people begin and end, and to no reading. */
export interface Outstayed {
  kind: 'outstayed';
  system: string;
  state: Exclude<StateName, 'normal'>;
  /** s from its beginning; null: until it is meant to end, as last put off. */
  afterS: number | null;
  delayS: number;
  offDelayS: number;
}

/** One time that a system was put into an operating state. Times in ms since 1970. */
export interface StateSpell {
  system: string;
  state: StateName;
  fromMs: number;
  /** When it ended; null: it is in force. */
  toMs: number | null;
  /** When it is meant to end, as last put off. */
  untilMs: number;
}

/** Somebody said that nothing more comes from these sensors: the gateway they hang on is gone. */
export interface Gone {
  sensors: readonly string[];
  cameMs: number;
}

/** What else is so at a site, by which some conditions are judged. */
export interface Around {
  /** States that are in force or were within the last day. */
  spells: readonly StateSpell[];
  /** Seconds since local midnight at an instant, ms since 1970. */
  daySecond: (atMs: number) => number;
  /** What was said to be gone, in any order. */
  gone?: readonly Gone[];
}

/** Where nothing else is known. */
export const NOTHING_AROUND: Around = { spells: [], daySecond: () => 0 };

/** Sensors whose readings a condition is held to, `system/key`. */
export function sensorsOf(condition: Condition): readonly string[] {
  switch (condition.kind) {
    case 'limits': {
      const { sensor, of } = condition;
      if (of?.kind === 'difference') return [sensor, of.other];
      return of?.kind === 'watts' ? [sensor, ...(of.meant.by?.sensors ?? [])] : [sensor];
    }
    case 'silence':
      return condition.sensors;
    case 'still':
      return [condition.sensor];
    case 'outstayed':
      return [];
  }
}
