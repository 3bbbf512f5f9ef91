import { held, KELVIN, type Law, law } from './law';

const COLDEST = -5;
const HOTTEST = 60;
const SALTIEST = 60;

/** mol/kg of calcium in sea water of salinity 1. */
export const CALCIUM = 0.02128 / 40.087 / 1.80655;

/**
 * Solubility of aragonite, the form of calcium carbonate that corals build, in sea water.
 *
 *   log10 Ksp = −171.945 − 0.077993·T + 2903.293/T + 71.595·log10 T + a(T)·√S − 0.10018·S + 0.0059415·S^1.5
 *
 * @param temperature °C      5 to 40
 * @param salinity    PSS-78  5 to 44
 * @returns           1       pKsp in (mol/kg)²
 *
 * Holds      for the mineral, not for what builds it. Beyond the range: the formula, temperature held between −5 and 60 °C,
 *            salinity between 0 and 60.
 * Leaves out pressure, and magnesium that is not in the sea's proportion.
 * Source     Mucci 1983, American Journal of Science 283, 780, as in R package seacarb (github.com/cran/seacarb).
 * Checked    tests/core/water/carbonate-sea.test.ts, through the whole-system values.
 */
export function aragonitePk(temperature: number, salinity: number): number {
  const T = held(temperature, COLDEST, HOTTEST) + KELVIN;
  const s = held(salinity, 0, SALTIEST);
  const root = Math.sqrt(s);
  const bySalt = -0.068393 + 0.0017276 * T + 88.135 / T;
  const fresh = -171.945 - 0.077993 * T + 2903.293 / T + 71.595 * Math.log10(T);
  return -(fresh + bySalt * root - 0.10018 * s + 0.0059415 * s * root);
}

/**
 * Solubility of calcite, the harder form, in sea water.
 *
 *   log10 Ksp = −171.9065 − 0.077993·T + 2839.319/T + 71.595·log10 T + a(T)·√S − 0.07711·S + 0.0041249·S^1.5
 *
 * @param temperature °C     5 to 40
 * @param salinity    PSS-78 5 to 44
 * @returns           1      pKsp in (mol/kg)²
 *
 * Holds, leaves out, source, checked: as `aragonitePk`.
 */
export function calcitePk(temperature: number, salinity: number): number {
  const T = held(temperature, COLDEST, HOTTEST) + KELVIN;
  const s = held(salinity, 0, SALTIEST);
  const root = Math.sqrt(s);
  const bySalt = -0.77712 + 0.0028426 * T + 178.34 / T;
  const fresh = -171.9065 - 0.077993 * T + 2839.319 / T + 71.595 * Math.log10(T);
  return -(fresh + bySalt * root - 0.07711 * s + 0.0041249 * s * root);
}

const TEMPERATURE = { name: 'temperature', unit: '°C', low: 5, high: 40 };
const SALINITY = { name: 'salinity', unit: '', low: 5, high: 44 };

type ConstantLaw = Law<[temperature: number, salinity: number]>;

export const aragonitePkLaw: ConstantLaw = law('aragonite-pk', '', aragonitePk, [TEMPERATURE, SALINITY]);
export const calcitePkLaw: ConstantLaw = law('calcite-pk', '', calcitePk, [TEMPERATURE, SALINITY]);
