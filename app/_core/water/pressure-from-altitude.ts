import { held, type Law, law } from './law';

/** Pa: one standard atmosphere. */
export const STANDARD_ATMOSPHERE = 101325;

/**
 * Pressure of the air at a height above the sea, on an ordinary day.
 *
 *   P = 101325 · (1 − 2.25577e-5·z)^5.2559
 *
 * @param altitude m  above sea level; −500 to 11 000
 * @returns        Pa
 *
 * Holds      as the standard atmosphere. Beyond the range: altitude held between −1000 and 11 000 m.
 * Leaves out weather (±3 %) and a building's own pressure: use a barometer where there is one.
 * Source     ASHRAE handbook of fundamentals, as in psychrolib (github.com/psychrometrics/psychrolib).
 * Checked    tests/core/water/pressure-from-altitude.test.ts; tests/reference/pressure-from-altitude.json, 1 Pa.
 */
export function pressureFromAltitude(altitude: number): number {
  return STANDARD_ATMOSPHERE * atmospheresFromAltitude(altitude);
}

/**
 * The same in standard atmospheres, as `oxygenSaturation` wants it.
 *
 * @param altitude m   above sea level; −500 to 11 000
 * @returns        atm
 *
 * Holds, leaves out, source, checked: as `pressureFromAltitude`.
 */
export function atmospheresFromAltitude(altitude: number): number {
  return (1 - 2.25577e-5 * held(altitude, -1000, 11_000)) ** 5.2559;
}

export const pressureFromAltitudeLaw: Law<[altitude: number]> = law(
  'pressure-from-altitude',
  'Pa',
  pressureFromAltitude,
  [{ name: 'altitude', unit: 'm', low: -500, high: 11_000 }],
);
