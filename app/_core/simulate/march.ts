import { airAt, stillAir } from './air';
import { type DayWatch, followDay } from './day-change';
import { type Crossing, type End, firstCrossing } from './detect';
import { swapEnds } from './gauges';
import { type Drift, followDrift } from './drift';
import type { Air } from './plant';
import { flip } from './react';
import { readSlope } from './signal';
import { linearise, ratesAt, step, type Tolerance } from './stepper';
import { pastThreshold, type Watch } from './watch';
import { look, rowsWithin } from './watch-table';
import type { World } from './world';

/** A world on its way, with the buffers the way needs. */
export interface March {
  world: World;
  tolerance: Tolerance;
  drift: Drift;
  day: DayWatch;
  /** The two ends of the step under consideration, and a place between them. */
  a: End;
  b: End;
  c: End;
  /** Step to try next, s. */
  h: number;
  /** Step to try first once something has switched, s: what served the last time. */
  first: number;
  /** Whether something has switched since the last step. */
  isFresh: boolean;
  /** The step accepted last, s, and its error; null before one. */
  before: { h: number; error: number } | null;
}

/** Longest step, s. */
const LONGEST = 14_400;
/** Shortest step that may fail, s: a state that needs shorter ones is no state of water any more. */
const LEAST = 1e-7;
/** A way this short, s, is no way: rounding alone makes such ones, and one over them is no number. */
const NO_TIME = 1e-9;
/** Error below which it says nothing of how the next one will be. */
const LEAST_ERROR = 0.01;
/** Longest first step after anything has switched, s. */
const AFTER_EVENT = 120;
/** Part by which a first step may outgrow the one before. */
const BOLDER = 1.5;
/** Part of a step to try next when it was refused twice. */
const AGAIN = 0.3;

/** Buffers for a world. */
export function march(world: World, tolerance: Tolerance, drift: Drift, day: DayWatch): March {
  const vector = () => new Float64Array(world.machine.plant.size);
  const end = (): End => ({ x: vector(), f: vector(), air: stillAir() });
  const a: End = { x: world.x, f: world.stepper.f, air: stillAir() };
  return {
    world,
    tolerance,
    drift,
    day,
    a,
    b: end(),
    c: end(),
    h: AFTER_EVENT,
    first: AFTER_EVENT,
    isFresh: true,
    before: null,
  };
}

/**
 * Begin anew with a short step, for the rates have leapt. Flows that begin and end at nothing make no leap: the step goes on
 * as long as before.
 * @param changed the watch whose change was the reason; null for another reason
 */
export function restart(m: March, changed: Watch | null): void {
  if (changed && SMOOTH.has(changed.role)) return;
  m.h = Math.min(m.h, m.first);
  m.isFresh = true;
}

/** Keep the present as a knot. */
export function keepKnot(world: World): void {
  world.record.knots.add(world.t, world.x, world.stepper.f);
}

/**
 * Integrate from the present towards `stop` until it is reached or a watch changes.
 * @returns the watch that changed, sitting on its threshold and already flipped, or null at `stop`
 */
export function marchTo(m: March, stop: number): Watch | null {
  const { world } = m;
  while (stop - world.t > NO_TIME) {
    const h = acceptedStep(m, stop - world.t);
    const changed = take(m, h, stop);
    if (changed) return changed;
  }
  world.t = Math.max(world.t, stop);
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
  let refused = false;
  for (;;) {
    step(stepper, world.t, h, world.hour, world.x, m.b.x, m.tolerance);
    world.record.steps++;
    const { error } = stepper;
    if (!(error <= 1) && h < LEAST) throw new Error('the model left the range of numbers');
    let factor = Number.isFinite(error) ? Math.min(5, Math.max(0.02, 0.9 * error ** -0.25)) : 0.1;
    if (error <= 1) {
      factor = Math.min(factor, foreseen(m, h, error));
      if (m.isFresh && h < room) m.first = Math.min(AFTER_EVENT, h * Math.min(factor, BOLDER));
      m.isFresh = false;
      // A step cut short by `stop` says little about the next one; it may only lengthen it.
      m.h = h < m.h && h === room ? Math.max(m.h, h * factor) : h * factor;
      return h;
    }
    // One that fails again was too long by far: where rates relax, the error falls less with the step than its order says.
    h *= refused ? Math.min(factor, AGAIN) : factor;
    refused = true;
    m.h = h;
  }
}

/**
 * By how much a step may outgrow the accepted one when the error goes on changing as it did since the one before
 * (Gustafsson's controller: E. Hairer and G. Wanner, Solving Ordinary Differential Equations II, section IV.8, from memory).
 */
function foreseen(m: March, h: number, error: number): number {
  const { before } = m;
  const now = Math.max(error, LEAST_ERROR);
  m.before = { h, error: now };
  if (!before || m.isFresh) return Number.POSITIVE_INFINITY;
  return Math.max(0.2, 0.9 * (h / before.h) * (before.error / now ** 2) ** 0.25);
}

/** Accept a step of length h, or the part of it up to the first crossing. */
function take(m: March, h: number, stop: number): Watch | null {
  const { world, a, b } = m;
  const { stepper } = world;
  const end = h === stop - world.t ? stop : world.t + h;
  a.x = world.x;
  a.f = stepper.f;
  airOf(m, world.t, a.air);
  airOf(m, end, b.air);
  ratesAt(stepper, end, world.hour, b.x, b.f);
  const crossing = firstCrossing(world.table, h, a, b);
  if (crossing) landOn(m, crossing, h);
  else arrive(m, end);
  const { gauges } = world.table;
  if (crossing) look(world.table, world.x, m.a.air);
  // The readings at the far end, just taken, are those of the next step's near end.
  else swapEnds(gauges);
  arrived(m, crossing?.watch ?? null);
  return crossing ? crossing.watch : null;
}

/**
 * Take note of where the world has arrived: time, state and rates are set, `m.a.air` is the air there, and the
 * gauges have been looked at there.
 * @param changed the watch that sits on its threshold and changes now, with all that are tied with it
 */
export function arrived(m: March, changed: Watch | null): void {
  const { world } = m;
  keepKnot(world);
  followDrift(m.drift, world);
  followDay(m.day, world);
  if (changed) flipTogether(m, changed);
}

/** s: what would change within a millisecond changes now, so that two equal thresholds are not told apart by rounding. */
const TIE = 1e-3;

function flipTogether(m: March, first: Watch): void {
  const { world, a } = m;
  const { table } = world;
  const tied = rowsWithin(table, TIE, world.x, world.stepper.f, a.air);
  flip(world, first);
  for (const row of tied) if (table.watches[row] !== first) flip(world, table.watches[row] as Watch);
}

/** The end of the step becomes the present, and `a` the place for the next one. */
function arrive(m: March, t: number): void {
  const { world, a, b } = m;
  world.t = t;
  world.x = b.x;
  world.stepper.f = b.f;
  [m.a, m.b] = [b, a];
}

/**
 * Watches that only tell of the water, and those of flows that begin and end at nothing: they leave its course as it was, at
 * that instant.
 */
const SMOOTH: ReadonlySet<Watch['role']> = new Set(['alarm', 'limit', 'sign', 'siphon', 'overflow']);

/** Go to a crossing within a step of length h: read off between its ends where the course is smooth there, else stepped to. */
function landOn(m: March, { watch, at }: Crossing, h: number): void {
  const { world } = m;
  const { stepper } = world;
  if (SMOOTH.has(watch.role)) {
    const tau = land(m, watch, h * at, h, m.c, (t) => between(m.a, m.b, h, t, m.c.x));
    [m.b, m.c] = [m.c, m.b];
    arrive(m, world.t + tau);
    return;
  }
  const tau = land(m, watch, h * at, h, m.b, (t) => {
    step(stepper, world.t, t, world.hour, world.x, m.b.x, m.tolerance);
    world.record.steps++;
  });
  arrive(m, world.t + tau);
}

/** The state a time tau into a step of length h, by the cubic through the values and rates at both ends: water and salt stay whole. */
function between(a: End, b: End, h: number, tau: number, to: Float64Array): void {
  const z = tau / h;
  const y = 1 - z;
  const [fromA, slopeA] = [(1 + 2 * z) * y * y, z * y * y * h];
  const [fromB, slopeB] = [z * z * (3 - 2 * z), -z * z * y * h];
  for (let s = 0; s < to.length; s++) {
    to[s] =
      fromA * (a.x[s] as number) +
      slopeA * (a.f[s] as number) +
      fromB * (b.x[s] as number) +
      slopeB * (b.f[s] as number);
  }
}

/** Most tries spent on landing on one crossing. */
const LANDINGS = 40;

/**
 * Find the crossing itself: by Newton's rule while that stays between what lies before it and what lies beyond, else by halves.
 * @param end receives what is there
 * @param goTo puts the state a time into the step there
 * @returns s into the step
 */
function land(m: March, w: Watch, guess: number, h: number, end: End, goTo: (tau: number) => void): number {
  const { world } = m;
  const { stepper } = world;
  const width = Math.abs(w.on - w.off);
  let low = 0;
  let high = h;
  let tau = Math.min(Math.max(guess, 1e-9), h);
  for (let i = 0; ; i++) {
    goTo(tau);
    ratesAt(stepper, world.t + tau, world.hour, end.x, end.f);
    airOf(m, world.t + tau, end.air);
    const g = pastThreshold(w, end.x, end.air);
    const slope = (w.active ? -w.sign : w.sign) * readSlope(w.signal, end.x, end.f, end.air);
    const near = Math.abs(g / slope);
    // Within a millisecond and well inside the watch's own width, or as near as numbers allow.
    if (near < 1e-7 || (near < 1e-3 && Math.abs(g) < width / 4) || high - low < 1e-7 || i === LANDINGS) break;
    // Past a summit that only just touches, the crossing lies before as well.
    if (g > 0 || !(slope > 0)) high = tau;
    else low = tau;
    const wanted = tau - g / slope;
    tau = wanted > low && wanted < high ? wanted : (low + high) / 2;
  }
  return tau;
}
