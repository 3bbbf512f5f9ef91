import { STRIDE, TEMPERATURE } from './plant';
import type { DayChange } from './machine';
import { harm } from './react';
import type { World } from './world';

const DAY = 86_400;

interface Entry {
  t: number;
  value: number;
}

/**
 * Lowest (for a fall: highest, signs turned) temperature of the last 24 hours, one queue a limit. As long as nothing has gone
 * further from the least of the whole run than the limit, that alone is kept.
 */
export interface DayWatch {
  /** Least of the whole run, in the limit's direction, °C. */
  least: Float64Array;
  queues: (Entry[] | null)[];
  /** Slope of each at the last accepted step, K/s in the limit's direction. */
  slopes: Float64Array;
}

/** Begin with what the node's temperature was at the start. */
export function dayWatch(world: World): DayWatch {
  const { dayChanges } = world.machine;
  return {
    least: Float64Array.from(dayChanges, (change) => begun(change, world.x)),
    queues: dayChanges.map(() => null),
    slopes: new Float64Array(dayChanges.length),
  };
}

/** Where the day before the run had left it, °C in the limit's direction. */
function begun(change: DayChange, x: Float64Array): number {
  return change.sign * temperature(x, change) - change.before;
}

function temperature(x: Float64Array, change: DayChange): number {
  return x[STRIDE * change.node + TEMPERATURE] as number;
}

/** Look at each accepted step whether the change within 24 hours has passed its limit, and locate where. */
export function followDay(day: DayWatch, world: World): void {
  const changes = world.machine.dayChanges;
  for (let i = 0; i < changes.length; i++) {
    const change = changes[i] as DayChange;
    const slope = change.sign * (world.stepper.f[STRIDE * change.node + TEMPERATURE] as number);
    const before = day.slopes[i] as number;
    day.slopes[i] = slope;
    // A turn within the step may be the least of the day, or the most, though neither end is.
    const turn = before * slope < 0 ? turnWithin(world, change, before, world.record.knots.length - 1) : null;
    const value = change.sign * temperature(world.x, change);
    if (day.queues[i] === null) {
      const least = Math.min(day.least[i] as number, value, turn?.value ?? value);
      day.least[i] = least;
      const isWithin = Math.max(value, turn?.value ?? value) - least <= change.limit;
      if (isWithin && world.beyondDay[i] === null) continue;
      day.queues[i] = queueSoFar(world, change);
    }
    const queue = day.queues[i] as Entry[];
    for (const entry of leaving(world, change, queue, world.record.knots.length - 1)) look(world, i, queue, entry);
    if (turn) look(world, i, queue, turn);
    look(world, i, queue, { t: world.t, value });
  }
}

/** The queue as it stood before the last step. */
function queueSoFar(world: World, change: DayChange): Entry[] {
  const { machine, record } = world;
  const { knots } = record;
  const place = STRIDE * change.node + TEMPERATURE;
  const queue: Entry[] = [{ t: 0, value: begun(change, machine.initial) }];
  for (let i = 1; i < knots.length - 1; i++) {
    const before = change.sign * knots.rate(i - 1, place);
    const entries = leaving(world, change, queue, i);
    if (before * change.sign * knots.rate(i, place) < 0) entries.push(turnWithin(world, change, before, i));
    for (const entry of [...entries, { t: knots.time(i), value: change.sign * knots.value(i, place) }]) {
      drop(queue, entry.t);
      enter(queue, entry);
    }
  }
  return queue;
}

/** What is kept and has just been a day ago at some moment of the step to knot `to`: until then the change still counts from it. */
function leaving(world: World, change: DayChange, queue: Entry[], to: number): Entry[] {
  const { knots } = world.record;
  const begin = knots.time(Math.max(0, to - 1));
  const end = knots.time(to);
  const moments: Entry[] = [];
  for (const { t } of queue) {
    if (t + DAY >= end) break;
    if (t + DAY > begin) moments.push({ t: t + DAY, value: within(world, change, t + DAY, to) });
  }
  return moments;
}

/** Temperature in the limit's direction at a moment of the step to knot `to`, °C. */
function within(world: World, change: DayChange, t: number, to: number): number {
  const { knots } = world.record;
  return change.sign * knots.between(Math.max(0, to - 1), STRIDE * change.node + TEMPERATURE, t);
}

function look(world: World, index: number, queue: Entry[], entry: Entry): void {
  const change = world.machine.dayChanges[index] as DayChange;
  // The head is the least of all that are kept, so that most looks end here.
  const far = entry.value - (queue[0] as Entry).value > change.limit;
  stand(world, index, queue, entry.t, far && entry.value - leastOf(world, change, queue, entry.t) > change.limit);
  drop(queue, entry.t);
  enter(queue, entry);
}

/** One older than a day is kept, to know that the day's beginning lies behind it. */
function drop(queue: Entry[], t: number): void {
  while (queue.length > 1 && (queue[1] as Entry).t < t - DAY) queue.shift();
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

/** Where the temperature (in the limit's direction) turns within the step to knot `to`; `slope` is the one it comes with. */
function turnWithin(world: World, change: DayChange, slope: number, to: number): Entry {
  const { knots } = world.record;
  const value = (t: number) => within(world, change, t, to);
  const toward = Math.sign(slope);
  let low = knots.time(Math.max(0, to - 1));
  let high = knots.time(to);
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
    if (within(world, change, t, knots.length - 1) - leastOf(world, change, queue, t) > change.limit) high = t;
    else low = t;
  }
  return high;
}
