import { held, type Law, law } from './law';

/**
 * Temperature at which sea water begins to freeze, at the pressure of the air.
 *
 *   tf = −0.0575·S + 1.710523e-3·S^1.5 − 2.154996e-4·S²
 *
 * @param salinity PSS-78 4 to 40
 * @returns        °C     −1.92 at salinity 35
 *
 * Holds      for salts in the proportions of the sea. Beyond the range: the formula, salinity held between 0 and 100.
 * Leaves out pressure, and how far still water can be cooled below it.
 * Source     Fofonoff & Millard 1983, UNESCO Technical Papers in Marine Science 44, p. 29.
 * Checked    tests/core/water/freezing-point.test.ts; tests/reference/freezing-point.json.
 */
export function freezingPoint(salinity: number): number {
  const s = held(salinity, 0, 100);
  return s * (-0.0575 + 1.710523e-3 * Math.sqrt(s) - 2.154996e-4 * s);
}

export const freezingPointLaw: Law<[salinity: number]> = law('freezing-point', '°C', freezingPoint, [
  { name: 'salinity', unit: '', low: 4, high: 40 },
]);
