import { held, KELVIN, type Law, law } from './law';

const COLDEST = -5;
const HOTTEST = 60;
const SALTIEST = 50;

/**
 * Strength of ammonium as an acid in fresh water: the pH at which half of the ammonia is un-ionised.
 *
 *   pKa = 0.09018 + 2729.92/T
 *
 * @param temperature °C 0 to 50
 * @returns           1  9.2464 at 25 °C
 *
 * Holds      in fresh water with little salt. Beyond the range: the formula, temperature held between −5 and 60 °C.
 * Leaves out hardness; a copy that prints 2727.92 misses the table.
 * Source     Emerson and others 1975, Journal of the Fisheries Research Board of Canada 32, 2379, as quoted in public codes.
 * Checked    tests/core/water/unionised-ammonia.test.ts; tests/reference/unionised-share.json.
 */
export function ammoniaPkFresh(temperature: number): number {
  return 0.09018 + 2729.92 / (held(temperature, COLDEST, HOTTEST) + KELVIN);
}

/** pK without salt, of Clegg & Whitfield. */
function pk0(T: number): number {
  return 9.244605 - 2729.33 * (1 / 298.15 - 1 / T);
}

/**
 * Strength of ammonium as an acid in water with sea salt, for pH on the total scale.
 *
 *   pK = pK0(T) + a(T)·S^¼ + b(T)·S^½ + c(T)·S^1.5 + d(T)·S² + e(T)·S^2.5
 *
 * @param temperature °C     −2 to 40
 * @param salinity    PSS-78 0 to 40
 * @returns           1      9.230 at 25 °C and salinity 35
 *
 * Holds      within 5 % of the constant, and for the total scale alone. Beyond the range: the formula, temperature held
 *            between −5 and 60 °C, salinity between 0 and 50.
 * Leaves out the factor that makes mol/kg of water into mol/kg of sea water, which takes 3 % off the share.
 * Source     Clegg & Whitfield 1995, Geochimica et Cosmochimica Acta 59, 2403, as in R package wq 0.2-8 (github.com/cran/wq).
 * Checked    tests/core/water/unionised-ammonia.test.ts; tests/reference/unionised-share-total.json.
 */
export function ammoniaPkTotal(temperature: number, salinity: number): number {
  const T = held(temperature, COLDEST, HOTTEST) + KELVIN;
  const s = held(salinity, 0, SALTIEST);
  const rootT = Math.sqrt(T);
  const root = Math.sqrt(s);
  const quarter = 0.04203362 - 11.24742 / T;
  const half = -13.6416 + 1.176949 * rootT - 0.02860785 * T + 545.4834 / T;
  const oneAndHalf = -0.1462507 + 0.0090226468 * rootT - 1.471361e-4 * T + 10.5425 / T;
  const square = 0.004669309 - 1.691742e-4 * rootT - 0.5677934 / T;
  const twoAndHalf = -2.354039e-5 + 0.009698623 / T;
  return pk0(T) + quarter * Math.sqrt(root) + root * half + s * (root * oneAndHalf + s * (square + root * twoAndHalf));
}

/**
 * The same for pH on the free scale.
 *
 *   pK = pK0(T) + a(T)·S^½ + b(T)·S + c(T)·S² + d(T)·S³
 *
 * @param temperature °C     −2 to 40
 * @param salinity    PSS-78 0 to 40
 * @returns           1      9.337 at 25 °C and salinity 35
 *
 * Holds, leaves out, source: as `ammoniaPkTotal`, for the free scale. Another code prints 7.14045e-5 for 7.1047e-5: 0.0004.
 * Checked    tests/core/water/unionised-ammonia.test.ts; tests/reference/unionised-share-free.json.
 */
export function ammoniaPkFree(temperature: number, salinity: number): number {
  const T = held(temperature, COLDEST, HOTTEST) + KELVIN;
  const s = held(salinity, 0, SALTIEST);
  const half = 0.0500616 - 9.412696 / T - 2.029559e-7 * T * T;
  const one = -0.0142372 + 1.46041e-5 * T + 3.730005 / T;
  const square = 7.1047e-5 - 0.0229021 / T;
  const cube = -5.521278e-7 + 1.95413e-4 / T;
  return pk0(T) + Math.sqrt(s) * half + s * (one + s * (square + s * cube));
}

const TEMPERATURE = { name: 'temperature', unit: '°C', low: -2, high: 40 };
const SALINITY = { name: 'salinity', unit: '', low: 0, high: 40 };

export const ammoniaPkFreshLaw: Law<[temperature: number]> = law('ammonia-pk-fresh', '', ammoniaPkFresh, [
  { name: 'temperature', unit: '°C', low: 0, high: 50 },
]);

export const ammoniaPkTotalLaw: Law<[temperature: number, salinity: number]> = law(
  'ammonia-pk-total',
  '',
  ammoniaPkTotal,
  [TEMPERATURE, SALINITY],
);

export const ammoniaPkFreeLaw: Law<[temperature: number, salinity: number]> = law(
  'ammonia-pk-free',
  '',
  ammoniaPkFree,
  [TEMPERATURE, SALINITY],
);
