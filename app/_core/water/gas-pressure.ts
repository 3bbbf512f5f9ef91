import { type Law, law } from './law';

/** Pa in a millimetre of mercury, and m/s². */
const MERCURY = 133.322;
const GRAVITY = 9.80665;

/**
 * Total pressure of the gases dissolved in water, as a part of the air's.
 *
 *   % = 100 · (P + ΔP) / P
 *
 * @param excess     mmHg ΔP, as a saturometer shows it: nitrogen, oxygen and vapour less the air; −760 to 760
 * @param barometric mmHg P, of the air; 400 to 800
 * @returns          %    76 mmHg at sea level are 110 %
 *
 * Holds      by definition. Beyond the range: the formula, the air never thinner than 1 mmHg.
 * Leaves out which gas it is: nitrogen stays in an animal, oxygen is used.
 * Source     definition (scribd.com/document/328984093, Canadian guideline).
 * Checked    tests/core/water/oxidants.test.ts; tests/reference/gas-percent.json.
 */
export function gasPercent(excess: number, barometric: number): number {
  const p = Math.max(1, barometric);
  return (100 * (p + excess)) / p;
}

/**
 * Excess of gas that a depth of water holds down: below it no bubbles form.
 *
 *   ΔP = ρ · g · depth
 *
 * @param depth   m     0 to 50
 * @param density kg/m³ 990 to 1050
 * @returns       mmHg  75 for each metre of sea water, 73 of fresh
 *
 * Holds      for animals that stay down there: fry and sick fish come up. Beyond the range: the formula, nothing below nothing.
 * Leaves out the swim bladder, which swells at less.
 * Source     hydrostatics.
 * Checked    tests/core/water/oxidants.test.ts.
 */
export function depthCompensation(depth: number, density: number): number {
  return (Math.max(0, density) * GRAVITY * Math.max(0, depth)) / MERCURY;
}

export const gasPercentLaw: Law<[excess: number, barometric: number]> = law('gas-percent', '%', gasPercent, [
  { name: 'excess', unit: 'mmHg', low: -760, high: 760 },
  { name: 'barometric', unit: 'mmHg', low: 400, high: 800 },
]);
export const depthCompensationLaw: Law<[depth: number, density: number]> = law(
  'depth-compensation',
  'mmHg',
  depthCompensation,
  [
    { name: 'depth', unit: 'm', low: 0, high: 50 },
    { name: 'density', unit: 'kg/m³', low: 990, high: 1050 },
  ],
);
