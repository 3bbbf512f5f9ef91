import type { Air } from './plant';
import { type Entry, gradient, read, type Signal } from './signal';

/** A probe that follows its signal slowly: a lag of first order. */
export interface LaggingProbe {
  key: string;
  /** Where what it shows stands in the state vector. */
  at: number;
  /** Time constant, s, > 0. */
  lagS: number;
  signal: Signal;
}

/** A probe with the slopes of its signal, as the last linearisation found them. */
export interface ProbeRow extends LaggingProbe {
  slopes: Entry[];
}

/** Rates of what the probes show, per second: (signal − shown) / lag. */
export function probeRates(probes: readonly LaggingProbe[], x: Float64Array, air: Air, dx: Float64Array): void {
  for (const { at, lagS, signal } of probes) dx[at] = (read(signal, x, air) - (x[at] as number)) / lagS;
}

/** Bring the slopes of the probes' signals up to date. */
export function linearise(probes: readonly ProbeRow[], x: Float64Array): void {
  for (const probe of probes) probe.slopes = gradient(probe.signal, x);
}

/** Explicit dependence of the probes' rates on time: of one that hangs in the air, per s². */
export function probeTimeSlopes(probes: readonly LaggingProbe[], air: Air, ft: Float64Array): void {
  for (const { at, lagS, signal } of probes) ft[at] = signal.kind === 'air' ? air.temperatureSlope / lagS : 0;
}

/** Solve (shift·I − J) u = r for the probes' rows; all else is solved already. Nothing depends on them. */
export function solveProbes(probes: readonly ProbeRow[], shift: number, r: Float64Array, u: Float64Array): void {
  for (const { at, lagS, slopes } of probes) {
    let right = r[at] as number;
    for (const { index, slope } of slopes) right += (slope * (u[index] as number)) / lagS;
    u[at] = right / (shift + 1 / lagS);
  }
}
