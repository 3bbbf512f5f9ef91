import { airAt, type RoomAir, stillAir } from './air';
import { type Air, emptyLaws, type Laws, type Mode, type Plant } from './plant';
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
export const TOLERANCE: Tolerance = { relative: 2e-6, absolute: 2e-7 };

/** Everything one integration needs, allocated once. */
export interface Stepper {
  plant: Plant;
  mode: Mode;
  room: RoomAir;
  /** Seconds of the day at time 0 of the run. */
  clockS: number;
  star: Star;
  factor: Factor;
  air: Air;
  laws: Laws;
  stages: Float64Array[];
  stage: Float64Array;
  right: Float64Array;
  timeSlope: Float64Array;
  /** Rates at the state the next step starts from. */
  f: Float64Array;
  /** Local error of the last step, in units of the tolerance. */
  error: number;
}

/** A stepper for one plant. */
export function makeStepper(plant: Plant, mode: Mode, room: RoomAir, clockS: number): Stepper {
  const vector = () => new Float64Array(plant.size);
  return {
    plant,
    mode,
    room,
    clockS,
    star: emptyStar(plant.nodes, plant.hub),
    factor: emptyFactor(plant.nodes),
    air: stillAir(),
    laws: emptyLaws(plant.nodes),
    stages: ALPHA.map(vector),
    stage: vector(),
    right: vector(),
    timeSlope: vector(),
    f: vector(),
    error: 0,
  };
}

/** Rates at a time within the straight piece of hour `hour`. */
export function ratesAt(stepper: Stepper, t: number, hour: number, x: Float64Array, dx: Float64Array): void {
  setAir(stepper, t, hour);
  rates(stepper.plant, stepper.mode, stepper.air, x, dx, stepper.laws);
}

function setAir(stepper: Stepper, t: number, hour: number): void {
  airAt(stepper.room, stepper.clockS + t, hour, stepper.air);
}

/** Prepare the Jacobian at the state a step starts from; the last rates asked for must be those there, into `stepper.f`. */
export function linearise(stepper: Stepper, t: number, hour: number, x: Float64Array): void {
  setAir(stepper, t, hour);
  slopes(stepper.plant, stepper.mode, x, stepper.f, stepper.laws, stepper.star);
  if (!stepper.room.steady) timeSlopes(stepper.plant, stepper.mode, stepper.air, x, stepper.timeSlope);
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
  const { star, factor, stages, stage, right, timeSlope } = stepper;
  const size = stepper.plant.size;
  factorStar(star, 1 / (GAMMA * h), factor);
  for (let i = 0; i < 6; i++) {
    const u = stages[i] as Float64Array;
    if (i === 0) {
      right.set(stepper.f);
    } else {
      stageState(x, stages, A[i] as readonly number[], i, stage);
      ratesAt(stepper, t + (ALPHA[i] as number) * h, hour, stage, right);
      addStages(right, stages, C[i] as readonly number[], i, 1 / h);
    }
    const d = (D[i] as number) * h;
    if (d !== 0 && !stepper.room.steady)
      for (let s = 0; s < size; s++) right[s] = (right[s] as number) + d * (timeSlope[s] as number);
    solveStar(star, factor, stepper.plant.reservoirs, right, u);
  }
  finish(stepper, x, to, tolerance);
}

function stageState(
  x: Float64Array,
  stages: Float64Array[],
  a: readonly number[],
  count: number,
  out: Float64Array,
): void {
  out.set(x);
  for (let j = 0; j < count; j++) {
    const weight = a[j] as number;
    const u = stages[j] as Float64Array;
    for (let s = 0; s < out.length; s++) out[s] = (out[s] as number) + weight * (u[s] as number);
  }
}

function addStages(
  right: Float64Array,
  stages: Float64Array[],
  c: readonly number[],
  count: number,
  scale: number,
): void {
  for (let j = 0; j < count; j++) {
    const weight = (c[j] as number) * scale;
    const u = stages[j] as Float64Array;
    for (let s = 0; s < right.length; s++) right[s] = (right[s] as number) + weight * (u[s] as number);
  }
}

function finish(stepper: Stepper, x: Float64Array, to: Float64Array, tolerance: Tolerance): void {
  const last = stepper.stages[5] as Float64Array;
  const { stage } = stepper;
  let sum = 0;
  for (let s = 0; s < to.length; s++) {
    const u = last[s] as number;
    const value = (stage[s] as number) + u;
    to[s] = value;
    const size = Math.max(Math.abs(value), Math.abs(x[s] as number));
    const scaled = u / (tolerance.absolute + tolerance.relative * size);
    sum += scaled * scaled;
  }
  stepper.error = Math.sqrt(sum / to.length);
}
