import { held, KELVIN, type Law, law } from './law';

const COLDEST = -5;
const HOTTEST = 60;

/**
 * First step of carbonic acid in sea water: carbon dioxide against bicarbonate, for pH on the total scale.
 *
 *   pK1 = 3633.86/T − 61.2172 + 9.67770·ln T − 0.011555·S + 0.0001152·S²
 *
 * @param temperature °C     2 to 35
 * @param salinity    PSS-78 19 to 43
 * @returns           1      5.847 at 25 °C and salinity 35: 3.2 times as strong as in fresh water
 *
 * Holds      for salts in the proportions of the sea. Beyond the range: the formula, temperature held between −5 and 60 °C,
 *            salinity between 0 and 60; below 19 use `brackishPk1`.
 * Leaves out pressure.
 * Source     Lueker, Dickson & Keeling 2000, Marine Chemistry 70, 105, as in R package seacarb (github.com/cran/seacarb).
 * Checked    tests/core/water/carbonate-constants.test.ts; tests/reference/sea-pk1.json.
 */
export function seaPk1(temperature: number, salinity: number): number {
  const T = held(temperature, COLDEST, HOTTEST) + KELVIN;
  const s = held(salinity, 0, 60);
  return 3633.86 / T - 61.2172 + 9.6777 * Math.log(T) - 0.011555 * s + 0.0001152 * s * s;
}

/**
 * Second step of carbonic acid in sea water: bicarbonate against carbonate, for pH on the total scale.
 *
 *   pK2 = 471.78/T + 25.9290 − 3.16967·ln T − 0.01781·S + 0.0001122·S²
 *
 * @param temperature °C     2 to 35
 * @param salinity    PSS-78 19 to 43
 * @returns           1      8.966 at 25 °C and salinity 35
 *
 * Holds, leaves out, source: as `seaPk1`. Beyond the range: likewise; below 19 use `brackishPk2`.
 * Checked    tests/core/water/carbonate-constants.test.ts; tests/reference/sea-pk2.json.
 */
export function seaPk2(temperature: number, salinity: number): number {
  const T = held(temperature, COLDEST, HOTTEST) + KELVIN;
  const s = held(salinity, 0, 60);
  return 471.78 / T + 25.929 - 3.16967 * Math.log(T) - 0.01781 * s + 0.0001122 * s * s;
}

const TEMPERATURE = { name: 'temperature', unit: '°C', low: 2, high: 35 };
const SALINITY = { name: 'salinity', unit: '', low: 19, high: 43 };

type ConstantLaw = Law<[temperature: number, salinity: number]>;

export const seaPk1Law: ConstantLaw = law('sea-pk1', '', seaPk1, [TEMPERATURE, SALINITY]);
export const seaPk2Law: ConstantLaw = law('sea-pk2', '', seaPk2, [TEMPERATURE, SALINITY]);
