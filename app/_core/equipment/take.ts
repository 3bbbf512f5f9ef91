/**
 * What this room knows: how a description with gaps becomes numbers the physics can use, and which of them were filled in.
 * What it leaves out: whether the equipment is healthy (`faults`) and how its plan reads (`plans`).
 * Where the numbers come from: the description; else `defaults.json`, each with source and plausible range.
 */
import type { Figure, Origin } from '../facility/figure';

/** Which end of every plausible range is taken: none, the one that heats and chokes, the one that cools and salts. */
export type Side = 'nominal' | 'warm' | 'cold';

/** Which end of a figure's range is the bad one on each side; `value` means the range has no bad end there. */
export interface BadEnd {
  warm: 'low' | 'high' | 'value';
  cold: 'low' | 'high' | 'value';
}

/** A default with its plausible range. */
export interface Fallback {
  value: number;
  low: number;
  high: number;
  unit: string;
  source: string;
}

/** A figure that was filled in or carries a range. */
export interface InputNote {
  path: string;
  name: string;
  unit: string;
  value: number;
  low: number;
  high: number;
  source: string;
  origin: Origin;
  /** Which end of the range is the bad one for warmth and want of oxygen, and which for cold and salt. */
  bad: BadEnd;
}

/** Collects figures for one side, and what was filled in or missing on the way. */
export interface Taker {
  side: Side;
  /** When set, only this path takes its bad end: asks what this one figure changes. */
  only: string | null;
  notes: InputNote[];
  /** Names of figures that are unknown and have no defensible default. */
  missing: string[];
}

/** A taker for one side. */
export function taker(side: Side, only: string | null = null): Taker {
  return { side, only, notes: [], missing: [] };
}

/**
 * The number to use for a figure.
 * @param path where it stands in the facility, for messages and for `only`
 * @param fallback used when the figure is absent or unknown; without one the name goes into `missing` and NaN comes back
 */
export function take(
  t: Taker,
  path: string,
  name: string,
  figure: Figure | undefined,
  bad: BadEnd,
  fallback?: Fallback,
): number {
  if (figure && figure.value !== null) {
    const { value, low = value, high = value } = figure;
    const { origin, source = origin } = figure;
    return choose(t, { path, name, unit: fallback?.unit ?? '', value, low, high, source, origin, bad });
  }
  if (!fallback) {
    t.missing.push(name);
    return Number.NaN;
  }
  return choose(t, { path, name, ...fallback, origin: 'default', bad });
}

function choose(t: Taker, note: InputNote): number {
  if (note.low === note.high) return note.value;
  t.notes.push(note);
  if (t.side === 'nominal' || (t.only !== null && t.only !== note.path)) return note.value;
  const end = note.bad[t.side];
  return end === 'value' ? note.value : note[end];
}

/** Less is worse whatever the harm (water, space, air). */
export const LESS: BadEnd = { warm: 'low', cold: 'low' };
/** More is worse whatever the harm (demand, drain-down, time). */
export const MORE: BadEnd = { warm: 'high', cold: 'high' };
/** Heat put in: more overheats, less lets it cool. */
export const HEAT: BadEnd = { warm: 'high', cold: 'low' };
/** Heat taken out: less overheats, more cools (and salts). */
export const LOSS: BadEnd = { warm: 'low', cold: 'high' };
/** Neither end is the bad one. */
export const EITHER: BadEnd = { warm: 'value', cold: 'value' };
