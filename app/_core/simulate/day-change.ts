import { STRIDE, TEMPERATURE } from './plant';
import type { DayChange } from './machine';
import { harm } from './react';
import type { World } from './world';

const DAY = 86_400;

interface Entry {
  t: number;
  value: number;
}

/** Lowest (for a fall: highest, signs turned) temperature of the last 24 hours, one queue a limit. */
export interface DayWatch {
  queues: Entry[][];
  /** Slope of each at the last accepted step, K/s in the limit's direction. */
  slopes: number[];
}

/** Begin with what the node's temperature was at the start. */
export function dayWatch(world: World): DayWatch {
  return {
    slopes: world.machine.dayChanges.map(() => 0),
    queues: world.machine.dayChanges.map((change) => [
      { t: 0, value: change.sign * temperature(world.x, change) - change.before },
    ]),
  };
}

function temperature(x: Float64Array, change: DayChange): number {
  return x[STRIDE * change.node + TEMPERATURE] as number;
}

/** Look at each accepted step whether the change within 24 hours has passed its limit, and locate where. */
export function followDay(day: DayWatch, world: World): void {
  const changes = world.machine.dayChanges;
  for (let i = 0; i < changes.length; i++) {
    const change = changes[i] as DayChange;
    const queue = day.queues[i] as Entry[];
    const slope = change.sign * (world.stepper.f[STRIDE * change.node + TEMPERATURE] as number);
    const before = day.slopes[i] as number;
    day.slopes[i] = slope;
    for (const t of leaving(world, queue)) look(world, i, queue, { t, value: within(world, change, t) });
    // A turn within the step may be the least of the day, or the most, though neither end is.
    if (before * slope < 0) look(world, i, queue, turnWithin(world, change, before));
    look(world, i, queue, { t: world.t, value: change.sign * temperature(world.x, change) });
  }
}

/** Moments of the last step at which something kept has just been a day ago: until then the change still counts from it. */
function leaving(world: World, queue: Entry[]): number[] {
  const { knots } = world.record;
  const begin = knots.time(Math.max(0, knots.length - 2));
  const moments: number[] = [];
  for (const { t } of queue) {
    if (t + DAY >= world.t) break;
    if (t + DAY > begin) moments.push(t + DAY);
  }
  return moments;
}

/** Temperature in the limit's direction at a moment of the last step, °C. */
function within(world: World, change: DayChange, t: number): number {
  const { knots } = world.record;
  return change.sign * knots.between(Math.max(0, knots.length - 2), STRIDE * change.node + TEMPERATURE, t);
}

function look(world: World, index: number, queue: Entry[], entry: Entry): void {
  const change = world.machine.dayChanges[index] as DayChange;
  // The head is the least of all that are kept, so that most looks end here.
  const far = entry.value - (queue[0] as Entry).value > change.limit;
  stand(world, index, queue, entry.t, far && entry.value - leastOf(world, change, queue, entry.t) > change.limit);
  // One older than a day is kept, to know that the day's beginning lies behind it.
  while (queue.length > 1 && (queue[1] as Entry).t < entry.t - DAY) queue.shift();
  enter(queue, entry);
}

/** Begin, go on with or end the time for which a change stands beyond its limit; harm when it has stood long enough. */
function stand(world: World, index: number, queue: Entry[], t: number, beyond: boolean): void {
  const change = world.machine.dayChanges[index] as DayChange;
  const since = world.beyondDay[index] ?? null;
  if (!beyond) {
    if (since !== null)
      world.record.exposures.push({ limit: world.machine.limits.length + index, fromS: since, toS: t });
    world.beyondDay[index] = null;
    return;
  }
  const from = since ?? crossed(world, change, queue, t);
  world.beyondDay[index] = from;
  if (t - from < change.forS) return;
  const { tank, limit, forS, groups } = change;
  const what = change.sign > 0 ? 'rise-24h' : 'fall-24h';
  harm(world, { class: 'animals', what, direction: 'above', tank, limit, forS, groups }, from + forS);
}

/** Least value of the 24 hours before t: of what is kept from within them, and at their very beginning. */
function leastOf(world: World, change: DayChange, queue: Entry[], t: number): number {
  const from = t - DAY;
  const inside = queue.find((entry) => entry.t >= from)?.value ?? Number.POSITIVE_INFINITY;
  if ((queue[0] as Entry).t >= from) return inside;
  const { knots } = world.record;
  return Math.min(inside, change.sign * knots.between(knots.before(from), STRIDE * change.node + TEMPERATURE, from));
}

function enter(queue: Entry[], entry: Entry): void {
  while (queue.length > 0 && (queue[queue.length - 1] as Entry).value >= entry.value) queue.pop();
  queue.push(entry);
}

/** Where the temperature (in the limit's direction) turns within the last step; `slope` is the one it comes with. */
function turnWithin(world: World, change: DayChange, slope: number): Entry {
  const { knots } = world.record;
  const last = Math.max(0, knots.length - 2);
  const value = (t: number) => within(world, change, t);
  const toward = Math.sign(slope);
  let low = knots.time(last);
  let high = knots.time(knots.length - 1);
  for (let n = 0; n < 30; n++) {
    const third = (high - low) / 3;
    if (toward * value(low + third) > toward * value(high - third)) high -= third;
    else low += third;
  }
  return { t: (low + high) / 2, value: value((low + high) / 2) };
}

/** When, within the last step, the change passed its limit. */
function crossed(world: World, change: DayChange, queue: Entry[], by: number): number {
  const { knots } = world.record;
  const last = Math.max(0, knots.length - 2);
  let low = knots.time(last);
  let high = by;
  for (let n = 0; n < 40; n++) {
    const t = (low + high) / 2;
    if (within(world, change, t) - leastOf(world, change, queue, t) > change.limit) high = t;
    else low = t;
  }
  return high;
}
