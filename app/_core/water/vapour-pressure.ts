import { held, KELVIN, type Law, law } from './law';

/** Hyland & Wexler over liquid water: ln e = H1/T + H2 + H3·T + H4·T² + H5·T³ + H6·ln T, e in Pa and T in K. */
const [H1, H2, H3, H4, H5, H6] = [
  -5.8002206e3, 1.3914993, -4.8640239e-2, 4.1764768e-5, -1.4452093e-8, 6.5459673,
] as const;

const COLDEST = -40;
const HOTTEST = 200;

/**
 * Pressure of water vapour over fresh liquid water.
 *
 *   ln e = −5800.2206/T + 1.3914993 − 0.048640239·T + 4.1764768e-5·T² − 1.4452093e-8·T³ + 6.5459673·ln T
 *
 * @param temperature °C 0 to 200
 * @returns           Pa 3169 at 25 °C
 *
 * Holds      over liquid water. Beyond the range: the formula goes on over supercooled water down to −40 °C, and is
 *            held there and at 200 °C.
 * Leaves out ice (which has less vapour than supercooled water), salt (see `salinityVapourFactor`), and the air's
 *            own slight enhancement.
 * Source     Hyland & Wexler 1983, in the ASHRAE handbook of fundamentals (coefficients from memory; psychrolib 1.1.1
 *            agrees to all digits).
 * Checked    tests/core/water/vapour-pressure.test.ts; tests/reference/vapour-pressure.json, 0.03 %; psychrolib.
 */
export function vapourPressure(temperature: number): number {
  const T = held(temperature, COLDEST, HOTTEST) + KELVIN;
  return Math.exp(H1 / T + H2 + T * (H3 + T * (H4 + T * H5)) + H6 * Math.log(T));
}

/**
 * How the pressure of water vapour changes with temperature.
 *
 * @param temperature °C   as above
 * @returns           Pa/K 0 where temperature is held
 *
 * Holds, leaves out: as `vapourPressure`, of which it is the exact derivative.
 * Checked    against central differences, and against the Clapeyron relation.
 */
export function vapourPressureSlope(temperature: number): number {
  return vapourPressure(temperature) * vapourPressureLogSlope(temperature);
}

/**
 * The same slope as a part of the pressure itself, for whoever has the pressure already.
 *
 * @param temperature °C  as above
 * @returns           1/K 0 where temperature is held
 *
 * Holds, leaves out, source: as `vapourPressure`.
 * Checked    through `vapourPressureSlope`, which is made from it.
 */
export function vapourPressureLogSlope(temperature: number): number {
  if (temperature < COLDEST || temperature > HOTTEST) return 0;
  const T = temperature + KELVIN;
  return -H1 / (T * T) + H3 + T * (2 * H4 + T * 3 * H5) + H6 / T;
}

export const vapourPressureLaw: Law<[temperature: number]> = law('vapour-pressure', 'Pa', vapourPressure, [
  { name: 'temperature', unit: '°C', low: 0, high: 200 },
]);
