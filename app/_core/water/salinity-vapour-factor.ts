import { held, type Law, law } from './law';

/**
 * How much salt lowers the pressure of water vapour.
 *
 *   f = e^(−0.000544·S)
 *
 * @param salinity PSS-78 0 to 40
 * @returns        part of the pressure over fresh water, 0.981 at 35
 *
 * Holds      between 0 and 40 °C, to 0.04 %. Beyond the range: the formula, salinity held between 0 and 300.
 * Leaves out the slight change with temperature.
 * Source     Weiss & Price 1980, Marine Chemistry 8, 347: the salinity term of their vapour pressure, as in R package
 *            marelac (github.com/r-forge/marelac) and PyCO2SYS (github.com/mvdh7/PyCO2SYS).
 * Checked    tests/core/water/salinity-vapour-factor.test.ts; tests/reference/salinity-vapour-factor.json.
 */
export function salinityVapourFactor(salinity: number): number {
  return Math.exp(-5.44e-4 * held(salinity, 0, 300));
}

export const salinityVapourFactorLaw: Law<[salinity: number]> = law(
  'salinity-vapour-factor',
  '',
  salinityVapourFactor,
  [{ name: 'salinity', unit: '', low: 0, high: 40 }],
);
