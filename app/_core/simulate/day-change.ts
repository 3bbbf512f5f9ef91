import { between } from './hermite';
import { STRIDE, TEMPERATURE } from './plant';
import type { DayChange } from './machine';
import { harm } from './react';
import type { Knot, World } from './world';

const DAY = 86_400;

/** Lowest (for a fall: highest, signs turned) temperature of the last 24 hours, one queue a limit. */
export interface DayWatch {
  queues: { t: number; value: number }[][];
}

/** Begin with what the node's temperature was at the start. */
export function dayWatch(world: World): DayWatch {
  return {
    queues: world.machine.dayChanges.map((change) => [{ t: 0, value: change.sign * temperature(world.x, change) - change.before }]),
  };
}

function temperature(x: Float64Array, change: DayChange): number {
  return x[STRIDE * change.node + TEMPERATURE] as number;
}

/** Look at each accepted step whether the change within 24 hours has passed its limit, and locate where. */
export function followDay(day: DayWatch, world: World): void {
  for (const [i, change] of world.machine.dayChanges.entries()) {
    const queue = day.queues[i];
    if (!queue) continue;
    const value = change.sign * temperature(world.x, change);
    if (value - lowest(queue, world.t) > change.limit) report(world, change, queue);
    while (queue.length > 0 && (queue[queue.length - 1]?.value ?? 0) >= value) queue.pop();
    queue.push({ t: world.t, value });
    while (queue.length > 1 && (queue[1]?.t ?? 0) <= world.t - DAY) queue.shift();
  }
}

function lowest(queue: { t: number; value: number }[], t: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (const entry of queue) if (entry.t >= t - DAY) least = Math.min(least, entry.value);
  return least;
}

function report(world: World, change: DayChange, queue: { t: number; value: number }[]): void {
  const { knots } = world.record;
  const b = knots[knots.length - 1] as Knot;
  const a = knots[knots.length - 2] ?? b;
  let low = a.t;
  let high = b.t;
  for (let n = 0; n < 40; n++) {
    const t = (low + high) / 2;
    const value = change.sign * between(a, b, STRIDE * change.node + TEMPERATURE, t);
    if (value - lowest(queue, t) > change.limit) high = t;
    else low = t;
  }
  const what = change.sign > 0 ? 'rise-24h' : 'fall-24h';
  harm(world, { class: 'animals', what, direction: 'above', tank: change.tank, limit: change.limit, forS: 0, groups: change.groups }, high);
}
