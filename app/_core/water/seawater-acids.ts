import { held, KELVIN, type Law, law } from './law';

const COLDEST = -5;
const HOTTEST = 60;
const SALTIEST = 100;

/** mol/kg of sulphate and of fluoride in sea water of salinity 1: both stand in a fixed proportion to the chloride. */
export const SULPHATE = 0.14 / 96.062 / 1.80655;
export const FLUORIDE = 6.7e-5 / 18.998 / 1.80655;

/** mol/kg of salts weighed by the square of their charge, per kg of water. */
function ionicStrength(s: number): number {
  return (19.924 * s) / (1000 - 1.005 * s);
}

/**
 * How strongly sulphate binds hydrogen ions: why the total pH scale lies below the free one.
 *
 *   ln Ks = −4276.1/T + 141.328 − 23.093·ln T + a(T)·√I + b(T)·I − 2698/T·I^1.5 + 1776/T·I² + ln(1 − 0.001005·S)
 *
 * @param temperature °C     0 to 45
 * @param salinity    PSS-78 5 to 45
 * @returns           1      pK of HSO4⁻ on the free scale, mol/kg of sea water
 *
 * Holds      for salts in the proportions of the sea. Beyond the range: the formula, temperature held between −5 and 60 °C,
 *            salinity between 0 and 100.
 * Leaves out pressure.
 * Source     Dickson 1990, Journal of Chemical Thermodynamics 22, 113, as in R package seacarb (github.com/cran/seacarb).
 * Checked    tests/core/water/ph-scales.test.ts; tests/reference/sulphate-pk.json.
 */
export function sulphatePk(temperature: number, salinity: number): number {
  const T = held(temperature, COLDEST, HOTTEST) + KELVIN;
  const s = held(salinity, 0, SALTIEST);
  const log = Math.log(T);
  const i = ionicStrength(s);
  const root = Math.sqrt(i);
  const atNone = -4276.1 / T + 141.328 - 23.093 * log;
  const byRoot = -13856 / T + 324.57 - 47.986 * log;
  const byStrength = 35474 / T - 771.54 + 114.723 * log;
  const rest = (-2698 / T) * i * root + (1776 / T) * i * i + Math.log(1 - 0.001005 * s);
  return -(atNone + byRoot * root + byStrength * i + rest) / Math.LN10;
}

/**
 * How strongly fluoride binds hydrogen ions: the small step from the total to the seawater scale.
 *
 *   ln Kf = 1590.2/T − 12.641 + 1.525·√I + ln(1 − 0.001005·S)
 *
 * @param temperature °C     5 to 35
 * @param salinity    PSS-78 10 to 48
 * @returns           1      pK of HF on the free scale, mol/kg of sea water
 *
 * Holds      as `sulphatePk`. Beyond the range: likewise.
 * Leaves out pressure.
 * Source     Dickson & Riley 1979, Marine Chemistry 7, 89, as in R package seacarb (github.com/cran/seacarb); the range from memory.
 * Checked    tests/core/water/ph-scales.test.ts; tests/reference/fluoride-pk.json.
 */
export function fluoridePk(temperature: number, salinity: number): number {
  const T = held(temperature, COLDEST, HOTTEST) + KELVIN;
  const s = held(salinity, 0, SALTIEST);
  const ln = 1590.2 / T - 12.641 + 1.525 * Math.sqrt(ionicStrength(s)) + Math.log(1 - 0.001005 * s);
  return -ln / Math.LN10;
}

export const sulphatePkLaw: Law<[temperature: number, salinity: number]> = law('sulphate-pk', '', sulphatePk, [
  { name: 'temperature', unit: '°C', low: 0, high: 45 },
  { name: 'salinity', unit: '', low: 5, high: 45 },
]);

export const fluoridePkLaw: Law<[temperature: number, salinity: number]> = law('fluoride-pk', '', fluoridePk, [
  { name: 'temperature', unit: '°C', low: 5, high: 35 },
  { name: 'salinity', unit: '', low: 10, high: 48 },
]);
