import 'server-only';
import { coolingCurve, type Lump } from '#core/calibration/cooling-curve';
import { leastStep, type Stretch } from '#core/calibration/stretch';
import { type Fitted, fitCurve } from './fit-curve';

/** W/K that are looked for, as multiples of what is in use. */
const LEAST = 0.02;
const MOST = 50;
/** Steps from what is nearly right. */
const FEW = 3;
/** Standard deviation that even a probe which always shows the same has, K. Common practice, no source. */
const LEAST_SD = 0.005;

/**
 * Heat loss by which one stretch of cooling is explained best.
 *
 * @param lump   what is known meanwhile
 * @param loss   W/K in use, where the search begins
 * @param near   what was found with nearly the same lump: a few steps from there do
 * @returns      parameters: W/K, °C at the beginning
 */
export function fitCooling({ points }: Stretch, lump: Lump, loss: number, near?: Fitted): Fitted | null {
  const times = points.map(({ atMs }) => atMs);
  const values = points.map(({ value }) => value);
  const start = values[0] ?? 0;
  const curve = coolingCurve(lump, times);
  // Counted from one, so that the beginning is looked for as a multiple of something that is never 0.
  const shift = start - 1;
  return fitCurve({
    values,
    at: ([w = loss, from = 1]) => curve(w, from + shift),
    starts: near ? near.parameters : [loss, 1],
    steps: near ? FEW : undefined,
    least: [LEAST * loss, -4],
    most: [MOST * loss, 6],
    leastSd: Math.max(LEAST_SD, leastStep(points) / Math.sqrt(12)),
  });
}
