import { type Law, law } from './law';

/** Activity factor of a calm surface: an unoccupied pool (measured 0.50 to 0.57). Strong overflow: 0.7 to 1.0. */
export const CALM = 0.5;

/**
 * Latent heat that a water surface gives off for each pascal by which its vapour pressure exceeds the room's.
 *
 *   K = activity · area · (0.089 + 0.0782·V)
 *
 * @param area     m²   open water; 0.0001 to 100 000
 * @param airSpeed m/s  over the surface; 0 to 5
 * @param activity      0.5 calm (`CALM`) to 1.0 broken by overflow; 0 under a tight lid; 0 to 2
 * @returns        W/Pa
 *
 * Holds      for open indoor water, to a factor of two. Beyond the range: the same product; less than nothing counts as
 *            nothing.
 * Leaves out the lift that warm moist air gives itself, so it overstates when the air is as warm as the water.
 * Source     ASHRAE Transactions 104-1A (1998), paper 4146: W = (95 + 0.425 v)(pw − pa)/Y in inch-pound units
 *            (techstreet.com/standards/4146); the SI constants are from memory and agree within 0.6 %. Activity factors:
 *            ASHRAE pool list, scribd.com/document/112061313.
 * Checked    tests/core/water/evaporation.test.ts; tests/reference/evaporation-transfer.json, 0.8 %.
 */
export function evaporationTransfer(area: number, airSpeed: number, activity: number): number {
  return Math.max(0, activity) * Math.max(0, area) * (0.089 + 0.0782 * Math.max(0, airSpeed));
}

export const evaporationTransferLaw: Law<[area: number, airSpeed: number, activity: number]> = law(
  'evaporation-transfer',
  'W/Pa',
  evaporationTransfer,
  [
    { name: 'area', unit: 'm²', low: 1e-4, high: 1e5 },
    { name: 'airSpeed', unit: 'm/s', low: 0, high: 5 },
    { name: 'activity', unit: '', low: 0, high: 2 },
  ],
);
