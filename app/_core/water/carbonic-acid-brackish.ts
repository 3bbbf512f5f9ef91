import { held, KELVIN, type Law, law } from './law';

const COLDEST = -5;
const HOTTEST = 60;
const SALTIEST = 60;

/**
 * First step of carbonic acid in water of any salinity, for pH on the total scale.
 *
 *   pK1 = pK0(T) + a(S) + b(S)/T + c(S)·ln T
 *
 * @param temperature °C     0 to 50
 * @param salinity    PSS-78 1 to 50
 * @returns           1      5.840 at 25 °C and salinity 35
 *
 * Holds      in estuaries, and within 0.02 of `seaPk1` in sea water. Beyond the range: the formula, temperature held between
 *            −5 and 60 °C, salinity between 0 and 60.
 * Leaves out pressure, and waters whose salts are not the sea's.
 * Source     Millero 2010, Marine and Freshwater Research 61, 139, coefficients of the total scale as in a public code.
 * Checked    tests/core/water/carbonate-constants.test.ts.
 */
export function brackishPk1(temperature: number, salinity: number): number {
  const T = held(temperature, COLDEST, HOTTEST) + KELVIN;
  const s = held(salinity, 0, SALTIEST);
  const root = Math.sqrt(s);
  const log = Math.log(T);
  const fresh = -126.34048 + 6320.813 / T + 19.568224 * log;
  const salt = 13.4051 * root + 0.03185 * s - 5.218e-5 * s * s;
  return fresh + salt - (531.095 * root + 5.7789 * s) / T - 2.0663 * root * log;
}

/**
 * Second step of carbonic acid in water of any salinity, for pH on the total scale.
 *
 *   pK2 = pK0(T) + a(S) + b(S)/T + c(S)·ln T
 *
 * @param temperature °C     0 to 50
 * @param salinity    PSS-78 1 to 50
 * @returns           1      8.96 at 25 °C and salinity 35
 *
 * Holds, leaves out, source: as `brackishPk1`. Beyond the range: likewise.
 * Checked    tests/core/water/carbonate-constants.test.ts.
 */
export function brackishPk2(temperature: number, salinity: number): number {
  const T = held(temperature, COLDEST, HOTTEST) + KELVIN;
  const s = held(salinity, 0, SALTIEST);
  const root = Math.sqrt(s);
  const log = Math.log(T);
  const fresh = -90.18333 + 5143.692 / T + 14.613358 * log;
  const salt = 21.5724 * root + 0.1212 * s - 3.714e-4 * s * s;
  return fresh + salt - (798.292 * root + 18.951 * s) / T - 3.403 * root * log;
}

const TEMPERATURE = { name: 'temperature', unit: '°C', low: 0, high: 50 };
const SALINITY = { name: 'salinity', unit: '', low: 1, high: 50 };

type ConstantLaw = Law<[temperature: number, salinity: number]>;

export const brackishPk1Law: ConstantLaw = law('brackish-pk1', '', brackishPk1, [TEMPERATURE, SALINITY]);
export const brackishPk2Law: ConstantLaw = law('brackish-pk2', '', brackishPk2, [TEMPERATURE, SALINITY]);
