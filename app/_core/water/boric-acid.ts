import { held, KELVIN, type Law, law } from './law';
import { freeAboveTotal } from './ph-scales';
import { FLUORIDE, fluoridePk } from './seawater-acids';

const COLDEST = -5;
const HOTTEST = 60;
const SALTIEST = 60;

/** mol/kg of boron in sea water of salinity 1 (Uppström 1974). */
export const BORON = 0.0004157 / 35;

/**
 * Boric acid in sea water, which carries 80 to 100 µmol/kg of its alkalinity; for pH on the total scale.
 *
 *   ln Kb = (−8966.90 − 2890.53·√S − 77.942·S + 1.728·S^1.5 − 0.0996·S²)/T + 148.0248 + 137.1942·√S + 1.62142·S
 *           + (−24.4344 − 25.085·√S − 0.2474·S)·ln T + 0.053105·√S·T
 *
 * @param temperature °C     0 to 45
 * @param salinity    PSS-78 5 to 45
 * @returns           1      pKb, 8.597 at 25 °C and salinity 35
 *
 * Holds      for salts in the proportions of the sea. Beyond the range: the formula, temperature held between −5 and 60 °C,
 *            salinity between 0 and 60.
 * Leaves out pressure.
 * Source     Dickson 1990, Deep-Sea Research 37, 755, as in R package seacarb (github.com/cran/seacarb).
 * Checked    tests/core/water/carbonate-constants.test.ts; tests/reference/boric-pk.json.
 */
export function boricPk(temperature: number, salinity: number): number {
  const T = held(temperature, COLDEST, HOTTEST) + KELVIN;
  const s = held(salinity, 0, SALTIEST);
  const root = Math.sqrt(s);
  const byT = -8966.9 - 2890.53 * root + s * (-77.942 + 1.728 * root - 0.0996 * s);
  const none = 148.0248 + 137.1942 * root + 1.62142 * s;
  const byLog = -24.4344 - 25.085 * root - 0.2474 * s;
  return -(byT / T + none + byLog * Math.log(T) + 0.053105 * root * T) / Math.LN10;
}

/**
 * Water's own ions in sea water, for pH on the total scale.
 *
 *   ln Kw(seawater scale) = 148.9802 − 13847.26/T − 23.6521·ln T + (118.67/T − 5.977 + 1.0495·ln T)·√S − 0.01615·S
 *
 * @param temperature °C     0 to 45
 * @param salinity    PSS-78 0 to 45
 * @returns           1      pKw, 13.22 at 25 °C and salinity 35
 *
 * Holds      as `boricPk`. Beyond the range: likewise. The handbook's ln Kw of −30.434 comes of a rounded step between the
 *            scales; the exact step gives −30.441.
 * Leaves out pressure.
 * Source     Millero 1995, Geochimica et Cosmochimica Acta 59, 661, as in R package seacarb (github.com/cran/seacarb); the
 *            range from memory.
 * Checked    tests/core/water/carbonate-constants.test.ts; tests/reference/sea-pkw.json.
 */
export function seaPkw(temperature: number, salinity: number): number {
  const T = held(temperature, COLDEST, HOTTEST) + KELVIN;
  const s = held(salinity, 0, SALTIEST);
  const log = Math.log(T);
  const bySalt = 118.67 / T - 5.977 + 1.0495 * log;
  const ln = 148.9802 - 13847.26 / T - 23.6521 * log + bySalt * Math.sqrt(s) - 0.01615 * s;
  const total = 10 ** freeAboveTotal(temperature, s);
  const fluoride = FLUORIDE * s * 10 ** fluoridePk(temperature, s);
  return Math.log10((total + fluoride) / total) - ln / Math.LN10;
}

const TEMPERATURE = { name: 'temperature', unit: '°C', low: 0, high: 45 };

type ConstantLaw = Law<[temperature: number, salinity: number]>;

export const boricPkLaw: ConstantLaw = law('boric-pk', '', boricPk, [
  TEMPERATURE,
  { name: 'salinity', unit: '', low: 5, high: 45 },
]);
export const seaPkwLaw: ConstantLaw = law('sea-pkw', '', seaPkw, [
  TEMPERATURE,
  { name: 'salinity', unit: '', low: 0, high: 45 },
]);
