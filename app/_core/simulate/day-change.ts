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
    // A turn within the step may be the least of the day, though neither end is.
    const slope = change.sign * (world.stepper.f[STRIDE * change.node + TEMPERATURE] as number);
    if ((day.slopes[i] as number) < 0 && slope > 0) enter(queue, turnWithin(world, change));
    day.slopes[i] = slope;
    const value = change.sign * temperature(world.x, change);
    // Values rise along the queue, so its head is the least of the last day once the older ones are gone.
    while (queue.length > 1 && (queue[0] as Entry).t < world.t - DAY) queue.shift();
    if (value - (queue[0] as Entry).value > change.limit) report(world, change, (queue[0] as Entry).value);
    enter(queue, { t: world.t, value });
  }
}

function enter(queue: Entry[], entry: Entry): void {
  while (queue.length > 0 && (queue[queue.length - 1] as Entry).value >= entry.value) queue.pop();
  queue.push(entry);
}

/** Where the temperature (in the limit's direction) turns from falling to rising within the last step. */
function turnWithin(world: World, change: DayChange): Entry {
  const { knots } = world.record;
  const last = Math.max(0, knots.length - 2);
  const index = STRIDE * change.node + TEMPERATURE;
  const value = (t: number) => change.sign * knots.between(last, index, t);
  let low = knots.time(last);
  let high = knots.time(knots.length - 1);
  for (let n = 0; n < 30; n++) {
    const third = (high - low) / 3;
    if (value(low + third) < value(high - third)) high -= third;
    else low += third;
  }
  return { t: (low + high) / 2, value: value((low + high) / 2) };
}

function report(world: World, change: DayChange, least: number): void {
  const { knots } = world.record;
  const last = knots.length - 2;
  let low = knots.time(Math.max(0, last));
  let high = knots.time(knots.length - 1);
  for (let n = 0; n < 40; n++) {
    const t = (low + high) / 2;
    const value = change.sign * knots.between(Math.max(0, last), STRIDE * change.node + TEMPERATURE, t);
    if (value - least > change.limit) high = t;
    else low = t;
  }
  const what = change.sign > 0 ? 'rise-24h' : 'fall-24h';
  harm(
    world,
    {
      class: 'animals',
      what,
      direction: 'above',
      tank: change.tank,
      limit: change.limit,
      forS: 0,
      groups: change.groups,
    },
    high,
  );
}
