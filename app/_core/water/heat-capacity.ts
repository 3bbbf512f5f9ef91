import { ipts68 } from './ipts-68';
import { held, type Law, law } from './law';

/** UNESCO Technical Paper 44 (1983), p. 32: pure water, then the terms in S and S^1.5. */
const [C0, C1, C2, C3, C4] = [4217.4, -3.720283, 0.1412855, -2.654387e-3, 2.093236e-5] as const;
const [A0, A1, A2] = [-7.643575, 0.1072763, -1.38385e-3] as const;
const [B0, B1, B2] = [0.1770383, -4.07718e-3, 5.148e-5] as const;

/**
 * Specific heat of fresh or sea water at the pressure of the air.
 *
 *   cp = c(t) + a(t)·S + b(t)·S^1.5      t on the scale of 1968
 *
 * @param temperature °C       0 to 35
 * @param salinity    PSS-78   0 to 40
 * @returns           J/(kg·K) with a standard deviation of 0.5
 *
 * Holds      at the surface. Beyond the range: the polynomial, temperature held between −5 and 60 °C and salinity
 *            between 0 and 100. (The source prints check values up to 40 °C.)
 * Leaves out pressure; TEOS-10 gives 0.05 % more.
 * Source     Fofonoff & Millard 1983, UNESCO Technical Papers in Marine Science 44, p. 32.
 * Checked    tests/core/water/heat-capacity.test.ts; tests/reference/heat-capacity.json, last digit.
 */
export function heatCapacity(temperature: number, salinity: number): number {
  return heatCapacityIpts68(ipts68(temperature), salinity);
}

/**
 * The same with temperature on the scale of 1968, as the published tables have it.
 *
 * @param t68      °C     0 to 35
 * @param salinity PSS-78 0 to 40
 * @returns        J/(kg·K)
 *
 * Holds, leaves out, source, checked: as `heatCapacity`.
 */
export function heatCapacityIpts68(t68: number, salinity: number): number {
  const t = held(t68, -5, 60);
  const s = held(salinity, 0, 100);
  const water = C0 + t * (C1 + t * (C2 + t * (C3 + t * C4)));
  const linear = A0 + t * (A1 + t * A2);
  const root = B0 + t * (B1 + t * B2);
  return water + s * (linear + Math.sqrt(s) * root);
}

export const heatCapacityLaw: Law<[temperature: number, salinity: number]> = law(
  'heat-capacity',
  'J/(kg·K)',
  heatCapacity,
  [
    { name: 'temperature', unit: '°C', low: 0, high: 35 },
    { name: 'salinity', unit: '', low: 0, high: 40 },
  ],
);
