import { airAt, stillAir } from './air';
import { type DayWatch, followDay } from './day-change';
import { firstCrossing } from './detect';
import { type Drift, followDrift } from './drift';
import type { Air } from './plant';
import { flip } from './react';
import { readSlope } from './signal';
import { linearise, ratesAt, step, type Tolerance } from './stepper';
import { pastThreshold, type Watch } from './watch';
import type { World } from './world';

/** A world on its way, with the buffers the way needs. */
export interface March {
  world: World;
  tolerance: Tolerance;
  drift: Drift;
  day: DayWatch;
  next: Float64Array;
  fNext: Float64Array;
  airFrom: Air;
  airTo: Air;
  /** Step to try next, s. */
  h: number;
}

/** Longest step, s: an hour keeps plots smooth. */
const LONGEST = 3600;
/** First step after anything has switched, s. */
export const AFTER_EVENT = 20;

/** Buffers for a world. */
export function march(world: World, tolerance: Tolerance, drift: Drift, day: DayWatch): March {
  const vector = () => new Float64Array(world.machine.plant.size);
  return { world, tolerance, drift, day, next: vector(), fNext: vector(), airFrom: stillAir(), airTo: stillAir(), h: AFTER_EVENT };
}

/** Keep the present as a knot. */
export function keepKnot(world: World): void {
  world.record.knots.push({ t: world.t, x: Float64Array.from(world.x), f: Float64Array.from(world.stepper.f) });
}

/**
 * Integrate from the present towards `stop` until it is reached or a watch changes.
 * @returns the watch that changed, sitting on its threshold and already flipped, or null at `stop`
 */
export function marchTo(m: March, stop: number): Watch | null {
  const { world } = m;
  while (world.t < stop) {
    const h = acceptedStep(m, stop - world.t);
    const changed = take(m, h, stop);
    if (changed) return changed;
  }
  return null;
}

function airOf(m: March, t: number, air: Air): void {
  airAt(m.world.machine.room, m.world.stepper.clockS + t, m.world.hour, air);
}

/** Find a step that meets the tolerance; its result is in `next`. Returns its length. */
function acceptedStep(m: March, room: number): number {
  const { world } = m;
  const { stepper } = world;
  linearise(stepper, world.t, world.hour, world.x);
  let h = Math.min(m.h, room, LONGEST);
  for (;;) {
    step(stepper, world.t, h, world.hour, world.x, m.next, m.tolerance);
    world.record.steps++;
    const { error } = stepper;
    if (!Number.isFinite(error) && h < 1e-6) throw new Error('the model left the range of numbers');
    const factor = Number.isFinite(error) ? Math.min(5, Math.max(0.2, 0.9 * error ** -0.25)) : 0.1;
    if (error <= 1) {
      // A step cut short by `stop` says little about the next one; it may only lengthen it.
      m.h = h < m.h && h === room ? Math.max(m.h, h * factor) : h * factor;
      return h;
    }
    h *= factor;
    m.h = h;
  }
}

/** Accept a step of length h, or the part of it up to the first crossing. */
function take(m: March, h: number, stop: number): Watch | null {
  const { world } = m;
  const { stepper } = world;
  const end = h === stop - world.t ? stop : world.t + h;
  airOf(m, world.t, m.airFrom);
  airOf(m, end, m.airTo);
  ratesAt(stepper, end, world.hour, m.next, m.fNext);
  const crossing = firstCrossing(world.machine.watches, h, world.x, stepper.f, m.airFrom, m.next, m.fNext, m.airTo);
  if (crossing) land(m, crossing.watch, h * crossing.at, h);
  else arrive(m, end);
  keepKnot(world);
  followDrift(m.drift, world);
  followDay(m.day, world);
  if (crossing) flipTogether(m, crossing.watch);
  return crossing ? crossing.watch : null;
}

/** s: what would change within a millisecond changes now, so that two equal thresholds are not told apart by rounding. */
const TIE = 1e-3;

function flipTogether(m: March, first: Watch): void {
  const { world } = m;
  airOf(m, world.t, m.airTo);
  const tied = world.machine.watches.filter((w) => {
    if (w === first) return false;
    const slope = (w.active ? -w.sign : w.sign) * readSlope(w.signal, world.x, world.stepper.f, m.airTo);
    return slope > 0 && pastThreshold(w, world.x, m.airTo) + TIE * slope > 0;
  });
  for (const w of [first, ...tied]) flip(world, w);
}

function arrive(m: March, t: number): void {
  const { world } = m;
  world.t = t;
  [world.x, m.next] = [m.next, world.x];
  [world.stepper.f, m.fNext] = [m.fNext, world.stepper.f];
}

/** Step again to the crossing itself, corrected by Newton's rule until the watch sits on its threshold. */
function land(m: March, w: Watch, guess: number, h: number): void {
  const { world } = m;
  const { stepper } = world;
  let tau = Math.min(Math.max(guess, 1e-9), h);
  for (let i = 0; i < 8; i++) {
    step(stepper, world.t, tau, world.hour, world.x, m.next, m.tolerance);
    world.record.steps++;
    ratesAt(stepper, world.t + tau, world.hour, m.next, m.fNext);
    airOf(m, world.t + tau, m.airTo);
    const g = pastThreshold(w, m.next, m.airTo);
    const slope = (w.active ? -w.sign : w.sign) * readSlope(w.signal, m.next, m.fNext, m.airTo);
    const dt = -g / slope;
    const wanted = Math.min(Math.max(tau + dt, 1e-9), h);
    if (!Number.isFinite(dt) || Math.abs(wanted - tau) < 1e-7) break;
    tau = wanted;
  }
  arrive(m, world.t + tau);
}
