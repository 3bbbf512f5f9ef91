import type { Harm } from '../review/result';
import { Knots } from './knots';
import type { Machine } from './machine';
import type { Stepper } from './stepper';
import type { Timers } from './timers';
import type { WatchTable } from './watch-table';

/** A limit being exceeded: since when. */
export interface Exposure {
  limit: number;
  sinceS: number;
}

/** What a run has brought to light. Times are seconds from its beginning. */
export interface Record {
  harms: Harm[];
  /** First time each alarm was raised and could be heard, by key. */
  alarms: Map<string, number>;
  /** First time each aspect of the water left its usual band. */
  signs: Map<string, number>;
  acted: Set<string>;
  events: { t: number; what: string }[];
  knots: Knots;
  exposures: { limit: number; fromS: number; toS: number }[];
  /** Every change of a device's own regulation. */
  switches: { t: number; device: number; on: boolean }[];
  /** A tank with animals stood without movement, so that it fares worse than mixed water would; and which ones. */
  optimistic: boolean;
  still: Set<string>;
  /** Oxidant came in whose decay nobody knows: what it comes to is a bound, nothing having been used up. */
  bound: boolean;
  outside: boolean;
  endS: number;
  /** `restless`: some device switched so often that following it further would tell nothing. */
  why: 'horizon' | 'harm' | 'settled' | 'restless';
  steps: number;
}

/** A run in progress. */
export interface World {
  machine: Machine;
  table: WatchTable;
  stepper: Stepper;
  t: number;
  hour: number;
  x: Float64Array;
  timers: Timers;
  exposures: Exposure[];
  /** For each change within a day that stands beyond its limit: since when. */
  beyondDay: (number | null)[];
  /** Pending alarms: since when the condition holds. */
  pending: (number | null)[];
  record: Record;
}

/** An empty record for states of a length. */
export function emptyRecord(size: number): Record {
  return {
    harms: [],
    alarms: new Map(),
    signs: new Map(),
    acted: new Set(),
    events: [],
    knots: new Knots(size),
    exposures: [],
    switches: [],
    optimistic: false,
    still: new Set(),
    bound: false,
    outside: false,
    endS: 0,
    why: 'horizon',
    steps: 0,
  };
}
