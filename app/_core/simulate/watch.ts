import type { Air } from './plant';
import { read, type Signal } from './signal';

/** What a watch stands for; the run acts on changes by this. */
export type WatchRole =
  | 'regulation'
  | 'cut-out'
  | 'interlock'
  | 'alarm'
  | 'limit'
  | 'sign'
  | 'overflow'
  | 'siphon'
  | 'rim'
  | 'standpipe'
  | 'bare'
  | 'flood'
  | 'dry'
  | 'empty'
  | 'floor';

/**
 * A comparison with two thresholds: it becomes active when the signal passes `on` in the direction of `sign`
 * (+1 rising above, −1 falling below) and inactive when it passes `off` the other way. Latched ones stay active.
 */
export interface Watch {
  role: WatchRole;
  /** Index of what it belongs to (device, tank node, alarm, limit …) in the list of its role. */
  owner: number;
  signal: Signal;
  sign: 1 | -1;
  on: number;
  off: number;
  latched: boolean;
  active: boolean;
}

/** A watch with thresholds; `off` may equal `on`, and is then set back by `slack` so that a landing on it stays decided. */
export function watch(
  role: WatchRole,
  owner: number,
  signal: Signal,
  sign: 1 | -1,
  on: number,
  off: number,
  latched = false,
): Watch {
  return { role, owner, signal, sign, on, off, latched, active: false };
}

/**
 * How far a watch is past its next threshold, in the signal's unit: above 0 it must change; NaN when the signal is lost.
 * A latched, active one never changes.
 */
export function pastThreshold(w: Watch, x: Float64Array, air: Air): number {
  if (!w.active) return w.sign * (read(w.signal, x, air) - w.on);
  if (w.latched) return Number.NEGATIVE_INFINITY;
  return w.sign * (w.off - read(w.signal, x, air));
}
