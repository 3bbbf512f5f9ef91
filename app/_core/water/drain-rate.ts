import { type Law, law } from './law';

/** m/s²: standard gravity. */
export const GRAVITY = 9.80665;

/**
 * Water that runs out of an opening, hose or siphon under a head of water (Torricelli).
 *
 *   Q = Cd · a · √(2·g·h)
 *
 * @param coefficient      Cd: 0.62 for a sharp hole, 0.4 to 0.6 for a hose; 0.05 to 1
 * @param opening     m²   of the narrowest part; 1e-8 to 10
 * @param head        m    water surface above the outlet; 0 to 100
 * @returns           m³/s 0 without head
 *
 * Holds      while air does not enter. Beyond the range: the formula; less than nothing counts as nothing.
 * Leaves out friction of long hoses, except through the coefficient.
 * Source     Torricelli; coefficient 0.62 at calculatorlib.com/water-flow-from-tank-time-calculator; hoses from memory.
 * Checked    tests/core/water/drain.test.ts; tests/reference/drain-rate.json.
 */
export function drainRate(coefficient: number, opening: number, head: number): number {
  return Math.max(0, coefficient) * Math.max(0, opening) * Math.sqrt(2 * GRAVITY * Math.max(0, head));
}

export const drainRateLaw: Law<[coefficient: number, opening: number, head: number]> = law(
  'drain-rate',
  'm³/s',
  drainRate,
  [
    { name: 'coefficient', unit: '', low: 0.05, high: 1 },
    { name: 'opening', unit: 'm²', low: 1e-8, high: 10 },
    { name: 'head', unit: 'm', low: 0, high: 100 },
  ],
);
