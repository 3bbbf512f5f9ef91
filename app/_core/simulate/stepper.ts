import { airAt, type RoomAir, stillAir } from './air';
import { type Air, emptyLaws, type Laws, type Mode, OXYGEN, type Plant, STRIDE } from './plant';
import { followerRates } from './follow';
import { followerSlopes } from './follow-slopes';
import { emptyFollowerSlopes, factorFollower, type FollowerSlopes, solveFollower } from './follow-solve';
import {
  type LaggingProbe,
  linearise as lineariseProbes,
  probeRates,
  type ProbeRow,
  probeTimeSlopes,
  solveProbes,
} from './probes';
import { rates } from './rates';
import { A, ALPHA, C, D, GAMMA } from './rodas-tableau';
import { slopes, timeSlopes } from './slopes';
import { emptyFactor, emptyStar, type Factor, factorStar, type Star, solveStar } from './star';

/** Tolerances of a step: the error of each number is held below absolute + relative × its size. */
export interface Tolerance {
  relative: number;
  /** By kind: m³, °C, kg, g/m³, each as a part of a typical size of 1. */
  absolute: number;
}

/** Tight enough that events fall within a second of a reference integrator at 1e-10 (see the tests). */
export const TOLERANCE: Tolerance = { relative: 1e-6, absolute: 3e-8 };

/** For a question that is itself coarser: events within some tens of seconds. */
export const COARSE: Tolerance = { relative: 5e-5, absolute: 1.5e-6 };

/**
 * How much less the error of what is dissolved counts than that of water, warmth and salt: near its limits it moves through
 * more of its own size in a second than they do.
 */
const DISSOLVED = 0.2;

/** Everything one integration needs, allocated once. */
export interface Stepper {
  plant: Plant;
  mode: Mode;
  room: RoomAir;
  /** Seconds of the day at time 0 of the run. */
  clockS: number;
  star: Star;
  /** Rows of the followers carried, and of the probes that lag; both mostly empty. */
  followers: FollowerSlopes[];
  probes: ProbeRow[];
  factor: Factor;
  air: Air;
  laws: Laws;
  stages: Float64Array[];
  stage: Float64Array;
  right: Float64Array;
  timeSlope: Float64Array;
  /** How much the error of each number counts. */
  weights: Float64Array;
  /** Rates at the state the next step starts from. */
  f: Float64Array;
  /** Local error of the last step, in units of the tolerance. */
  error: number;
}

/** A stepper for one plant. */
export function makeStepper(
  plant: Plant,
  mode: Mode,
  room: RoomAir,
  clockS: number,
  probes: readonly LaggingProbe[] = [],
): Stepper {
  const vector = () => new Float64Array(plant.size);
  return {
    plant,
    mode,
    room,
    clockS,
    star: emptyStar(plant.nodes, plant.hub),
    followers: emptyFollowerSlopes(plant.nodes, plant.layout),
    probes: probes.map((probe) => ({ ...probe, slopes: [] })),
    factor: emptyFactor(plant.nodes),
    air: stillAir(),
    laws: emptyLaws(plant.nodes),
    stages: ALPHA.map(vector),
    stage: vector(),
    right: vector(),
    timeSlope: vector(),
    weights: weightsOf(plant),
    f: vector(),
    error: 0,
  };
}

function weightsOf({ nodes, layout, size }: Plant): Float64Array {
  const weights = new Float64Array(size).fill(1);
  for (let k = 0; k < nodes; k++) weights[STRIDE * k + OXYGEN] = DISSOLVED;
  return weights.fill(DISSOLVED, layout.floor + 1, layout.probes);
}

/** Rates at a time within the straight piece of hour `hour`. */
export function ratesAt(stepper: Stepper, t: number, hour: number, x: Float64Array, dx: Float64Array): void {
  setAir(stepper, t, hour);
  const { plant, mode, air, laws } = stepper;
  rates(plant, mode, air, x, dx, laws);
  if (stepper.followers.length > 0) followerRates(plant, mode, air, x, dx, laws);
  if (stepper.probes.length > 0) probeRates(stepper.probes, x, air, dx);
}

function setAir(stepper: Stepper, t: number, hour: number): void {
  airAt(stepper.room, stepper.clockS + t, hour, stepper.air);
}

/** Prepare the Jacobian at the state a step starts from; the last rates asked for must be those there, into `stepper.f`. */
export function linearise(stepper: Stepper, t: number, hour: number, x: Float64Array): void {
  setAir(stepper, t, hour);
  const { plant, mode, air, laws } = stepper;
  slopes(plant, mode, air, x, stepper.f, laws, stepper.star);
  if (stepper.followers.length > 0) followerSlopes(plant, mode, air, x, stepper.f, laws, stepper.followers);
  lineariseProbes(stepper.probes, x);
  if (stepper.room.steady) return;
  timeSlopes(plant, mode, air, x, stepper.timeSlope);
  probeTimeSlopes(stepper.probes, air, stepper.timeSlope);
}

/** Factorise (shift·I − J) of the whole state, after `linearise`. @param shift 1/s, > 0 */
export function factorise({ star, factor, followers }: Stepper, shift: number): void {
  factorStar(star, shift, factor);
  for (const row of followers) factorFollower(row, star, shift);
}

/** Solve (shift·I − J) u = r for the whole state, after `factorise`; `u` is another vector than `r`. */
export function solve({ plant, star, factor, followers, probes }: Stepper, r: Float64Array, u: Float64Array): void {
  solveStar(star, factor, plant.reservoirs, r, u);
  for (const row of followers) solveFollower(row, star, r, u);
  if (probes.length > 0) solveProbes(probes, factor.shift, r, u);
}

/**
 * One RODAS step of length h from (t, x) into `to`, after `linearise` at (t, x).
 * Leaves the error estimate, in units of the tolerance, in `stepper.error`.
 */
export function step(
  stepper: Stepper,
  t: number,
  h: number,
  hour: number,
  x: Float64Array,
  to: Float64Array,
  tolerance: Tolerance,
): void {
  const { stages, stage, right, timeSlope } = stepper;
  // What a step without end left behind must not be counted, not even with a weight of 0.
  if (!Number.isFinite(stepper.error)) for (const u of stages) u.fill(0);
  factorise(stepper, 1 / (GAMMA * h));
  for (let i = 0; i < 6; i++) {
    if (i === 0) {
      right.set(stepper.f);
    } else {
      // The last stage stands where the one before it stood and has gone on by its own step.
      if (i === 5) addTo(stage, stages[4] as Float64Array);
      else combine(x, stages, A[i] as readonly number[], 1, stage);
      ratesAt(stepper, t + (ALPHA[i] as number) * h, hour, stage, right);
      combine(right, stages, C[i] as readonly number[], 1 / h, right);
    }
    const d = (D[i] as number) * h;
    if (d !== 0 && !stepper.room.steady) addScaled(right, d, timeSlope);
    solve(stepper, right, stages[i] as Float64Array);
  }
  finish(stepper, x, to, tolerance);
}

function addTo(out: Float64Array, u: Float64Array): void {
  for (let s = 0; s < out.length; s++) out[s] = (out[s] as number) + (u[s] as number);
}

function addScaled(out: Float64Array, by: number, u: Float64Array): void {
  for (let s = 0; s < out.length; s++) out[s] = (out[s] as number) + by * (u[s] as number);
}

/** base + scale × Σ weights[j]·stages[j], in one pass over the state. `out` may be `base` itself. */
function combine(
  base: Float64Array,
  stages: Float64Array[],
  weights: readonly number[],
  scale: number,
  out: Float64Array,
): void {
  const n = out.length;
  const count = weights.length;
  // A stage too many counts for nothing: its weight is 0.
  const a = scale * (weights[0] as number);
  const b = count > 1 ? scale * (weights[1] as number) : 0;
  const c = count > 2 ? scale * (weights[2] as number) : 0;
  const d = count > 3 ? scale * (weights[3] as number) : 0;
  const e = count > 4 ? scale * (weights[4] as number) : 0;
  const u = stages[0] as Float64Array;
  const v = stages[1] as Float64Array;
  const w = stages[2] as Float64Array;
  const y = stages[3] as Float64Array;
  const z = stages[4] as Float64Array;
  for (let s = 0; s < n; s++) {
    out[s] =
      (base[s] as number) +
      (a * (u[s] as number) +
        b * (v[s] as number) +
        (c * (w[s] as number) + d * (y[s] as number)) +
        e * (z[s] as number));
  }
}

function finish(stepper: Stepper, x: Float64Array, to: Float64Array, tolerance: Tolerance): void {
  const last = stepper.stages[5] as Float64Array;
  const { stage, weights } = stepper;
  let sum = 0;
  for (let s = 0; s < to.length; s++) {
    const u = last[s] as number;
    const value = (stage[s] as number) + u;
    to[s] = value;
    const size = Math.max(Math.abs(value), Math.abs(x[s] as number));
    const scaled = ((weights[s] as number) * u) / (tolerance.absolute + tolerance.relative * size);
    sum += scaled * scaled;
  }
  // What follows the water does not water down the error of the water itself.
  stepper.error = Math.sqrt(sum / (stepper.plant.layout.floor + 1));
}
