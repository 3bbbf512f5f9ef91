import { type Law, law } from './law';

/** W/(m²·K) between open water and still air; from memory. */
export const SURFACE_COEFFICIENT = 5;

/**
 * Heat that open water gives to the air for each degree between them, evaporation not counted.
 *
 *   H = 5 · area
 *
 * @param area m²  open water; 0.0001 to 100 000
 * @returns    W/K
 *
 * Holds      for still indoor air, to a factor of two. Beyond the range: the same product; less than nothing counts as
 *            nothing.
 * Leaves out draughts, and lids (a covered surface is a wall).
 * Source     From memory; a Bowen ratio on the evaporation law gives 3 (calm) to 6 (broken surface).
 * Checked    tests/core/water/surface-convection.test.ts, against convection and radiation from two sides.
 */
export function surfaceConvection(area: number): number {
  return SURFACE_COEFFICIENT * Math.max(0, area);
}

export const surfaceConvectionLaw: Law<[area: number]> = law('surface-convection', 'W/K', surfaceConvection, [
  { name: 'area', unit: 'm²', low: 1e-4, high: 1e5 },
]);
