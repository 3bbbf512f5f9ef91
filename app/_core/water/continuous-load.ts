import { type Law, law } from './law';

/** Part of a breaker's rating that a load of three hours and more may take. */
export const CONTINUOUS_SHARE = 0.8;

/**
 * Power that a circuit may carry for three hours and more, as life support does.
 *
 *   P = 0.8 · breaker · volts
 *
 * @param breaker A rating of the breaker or fuse; 1 to 6300
 * @param volts   V 12 to 1000
 * @returns       W
 *
 * Holds      as the American rule for branch circuits; elsewhere as a rule of this house. A screening only: a qualified
 *            electrician decides. Beyond the range: the same product; less than nothing counts as nothing.
 * Leaves out power factor, start-up currents, warm enclosures and breakers rated for full load.
 * Source     The 80 % rule of the US electrical code, as quoted at manhattanreefs.com, electricity, watt vs amp.
 * Checked    tests/core/water/continuous-load.test.ts; tests/reference/continuous-load.json.
 */
export function continuousLoad(breaker: number, volts: number): number {
  return CONTINUOUS_SHARE * Math.max(0, breaker) * Math.max(0, volts);
}

export const continuousLoadLaw: Law<[breaker: number, volts: number]> = law('continuous-load', 'W', continuousLoad, [
  { name: 'breaker', unit: 'A', low: 1, high: 6300 },
  { name: 'volts', unit: 'V', low: 12, high: 1000 },
]);
