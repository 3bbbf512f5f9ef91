import { pastThreshold, type Watch } from './watch';
import type { World } from './world';

const DAY = 86_400;

/** Drift is carried forward half as fast again as it was seen, and a tenth of the distance is kept in hand. */
const HASTE = 1.5;
const RESERVE = 0.1;

/** How near each watch that matters came to its threshold, today and the day before. */
export interface Drift {
  watches: Watch[];
  today: Float64Array;
  yesterday: Float64Array;
}

const MATTERS: ReadonlySet<Watch['role']> = new Set<Watch['role']>(['limit', 'cut-out', 'interlock', 'dry', 'empty', 'rim', 'flood', 'floor']);

/** Begin to follow the drift of a run. */
export function driftOf(world: World): Drift {
  const watches = world.machine.watches.filter((w) => MATTERS.has(w.role) && w.signal.kind !== 'lost' && w.signal.kind !== 'constant');
  return {
    watches,
    today: new Float64Array(watches.length).fill(Number.NEGATIVE_INFINITY),
    yesterday: new Float64Array(watches.length).fill(Number.NEGATIVE_INFINITY),
  };
}

/** Take note of an accepted step. */
export function followDrift(drift: Drift, world: World): void {
  for (let i = 0; i < drift.watches.length; i++) {
    const w = drift.watches[i] as Watch;
    const past = pastThreshold(w, world.x, world.stepper.air);
    if (past > (drift.today[i] as number)) drift.today[i] = past;
  }
}

/**
 * Whether nothing can happen any more before `untilS`: asked at the end of each whole day from the second on. What came
 * nearer to a threshold today than yesterday is taken to go on doing so, half as fast again, to the end; if that reaches
 * none, no limit is being exceeded and no turning point lies ahead, the rest of the run would tell nothing new.
 */
export function nothingLeftToHappen(drift: Drift, world: World, untilS: number): boolean {
  const days = Math.round(world.t / DAY);
  if (days < 1 || Math.abs(world.t - days * DAY) > 1e-3) return false;
  const over = days >= 2 && quiet(world) && drift.watches.every((w, i) => leadsNowhere(drift, w, i, (untilS - world.t) / DAY));
  drift.yesterday.set(drift.today);
  drift.today.fill(Number.NEGATIVE_INFINITY);
  return over;
}

function quiet(world: World): boolean {
  return world.exposures.length === 0 && !world.timers.some((timer) => timer.turning && timer.live());
}

function leadsNowhere(drift: Drift, w: Watch, i: number, daysLeft: number): boolean {
  if (w.active) return true;
  const today = drift.today[i] as number;
  const nearer = Math.max(0, today - (drift.yesterday[i] as number));
  return today * (1 - RESERVE) + HASTE * nearer * daysLeft < 0;
}
