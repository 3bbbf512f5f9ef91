import { type Law, law } from './law';

/**
 * Temperature on the practical scale of 1968, in which the formulas of 1980 to 1983 for sea water are written.
 *
 *   t68 = 1.00024 · t90
 *
 * @param temperature °C today's scale (ITS-90); −2 to 40
 * @returns           °C on the scale of 1968: 0.006 °C more at 25 °C
 *
 * Holds      over the temperatures of living water, to 0.0005 °C (from memory). Beyond: the same line.
 * Leaves out the finer wiggles between the two scales.
 * Source     python-seawater, conversion T90conv (github.com/pyoceans/python-seawater).
 * Checked    tests/core/water/ipts-68.test.ts.
 */
export function ipts68(temperature: number): number {
  return 1.00024 * temperature;
}

export const ipts68Law: Law<[temperature: number]> = law('ipts-68', '°C', ipts68, [
  { name: 'temperature', unit: '°C', low: -2, high: 40 },
]);
