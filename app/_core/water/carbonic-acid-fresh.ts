import { held, KELVIN, type Law, law } from './law';

/**
 * First step of carbonic acid in fresh water: carbon dioxide against bicarbonate, by activities.
 *
 *   log10 K1 = −356.3094 − 0.06091964·T + 21834.37/T + 126.8339·log10 T − 1684915/T²
 *
 * @param temperature °C 0 to 90
 * @returns           1  pK1, 6.352 at 25 °C
 *
 * Holds      in dilute water. Beyond the range: the formula, temperature held between −5 and 100 °C.
 * Leaves out salt, which `davies` answers for little of it.
 * Source     Plummer & Busenberg 1982, Geochimica et Cosmochimica Acta 46, 1011, as in public codes; the range from memory.
 * Checked    tests/core/water/carbonate-constants.test.ts; tests/reference/fresh-pk1.json.
 */
export function freshPk1(temperature: number): number {
  const T = held(temperature, -5, 100) + KELVIN;
  return 356.3094 + 0.06091964 * T - 21834.37 / T - 126.8339 * Math.log10(T) + 1684915 / (T * T);
}

/**
 * Second step of carbonic acid in fresh water: bicarbonate against carbonate, by activities.
 *
 *   log10 K2 = −107.8871 − 0.03252849·T + 5151.79/T + 38.92561·log10 T − 563713.9/T²
 *
 * @param temperature °C 0 to 90
 * @returns           1  pK2, 10.329 at 25 °C
 *
 * Holds, leaves out, source: as `freshPk1`. A copy that prints −107.881 is 0.006 off; one that takes ln for log10 is not water.
 * Beyond the range: likewise.
 * Checked    tests/core/water/carbonate-constants.test.ts; tests/reference/fresh-pk2.json.
 */
export function freshPk2(temperature: number): number {
  const T = held(temperature, -5, 100) + KELVIN;
  return 107.8871 + 0.03252849 * T - 5151.79 / T - 38.92561 * Math.log10(T) + 563713.9 / (T * T);
}

/**
 * Water's own ions in fresh water, by activities.
 *
 *   log10 Kw = −283.971 − 0.05069842·T + 13323/T + 102.24447·log10 T − 1119669/T²
 *
 * @param temperature °C 0 to 90
 * @returns           1  pKw, 14.000 at 25 °C
 *
 * Holds, leaves out: as `freshPk1`. Beyond the range: likewise.
 * Source     Nordstrom and others 1990 as in the PHREEQC data base, coefficients as in public codes.
 * Checked    tests/core/water/carbonate-constants.test.ts.
 */
export function freshPkw(temperature: number): number {
  const T = held(temperature, -5, 100) + KELVIN;
  return 283.971 + 0.05069842 * T - 13323 / T - 102.24447 * Math.log10(T) + 1119669 / (T * T);
}

/**
 * Activity of an ion with one charge in dilute water, as a part of its concentration (Davies).
 *
 *   log10 γ = −(0.4883 + 8.074e-4·t)·(√I/(1 + √I) − 0.3·I)
 *
 * @param temperature   °C    0 to 90
 * @param ionicStrength mol/L half the sum of concentrations times charge squared; about 1.5 times the alkalinity of hard
 *                            water; 0 to 0.5
 * @returns             1     1 without ions, 0.93 at 5 mmol/L; an ion of two charges has its fourth power
 *
 * Holds      up to about 0.1 mol/L well, up to 0.5 roughly. Beyond the range: the formula, temperature held between −5 and
 *            100 °C, ionic strength between 0 and 0.5.
 * Leaves out pairs of ions.
 * Source     Davies' equation with the slope of Plummer & Busenberg 1982, as in public codes.
 * Checked    tests/core/water/carbonate-constants.test.ts.
 */
export function davies(temperature: number, ionicStrength: number): number {
  const i = held(ionicStrength, 0, 0.5);
  const root = Math.sqrt(i);
  const slope = 0.4883 + 8.074e-4 * held(temperature, -5, 100);
  return 10 ** (-slope * (root / (1 + root) - 0.3 * i));
}

const TEMPERATURE = { name: 'temperature', unit: '°C', low: 0, high: 90 };

export const freshPk1Law: Law<[temperature: number]> = law('fresh-pk1', '', freshPk1, [TEMPERATURE]);
export const freshPk2Law: Law<[temperature: number]> = law('fresh-pk2', '', freshPk2, [TEMPERATURE]);
export const freshPkwLaw: Law<[temperature: number]> = law('fresh-pkw', '', freshPkw, [TEMPERATURE]);
export const daviesLaw: Law<[temperature: number, ionicStrength: number]> = law('davies', '', davies, [
  TEMPERATURE,
  { name: 'ionicStrength', unit: 'mol/L', low: 0, high: 0.5 },
]);
