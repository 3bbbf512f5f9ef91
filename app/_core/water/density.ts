import { ipts68 } from './ipts-68';
import { held, type Law, law } from './law';

/** UNESCO Technical Paper 44 (1983), p. 17: pure water, then the terms in S, S^1.5 and S². */
const [W0, W1, W2, W3, W4, W5] = [
  999.842594, 6.793952e-2, -9.09529e-3, 1.001685e-4, -1.120083e-6, 6.536332e-9,
] as const;
const [A0, A1, A2, A3, A4] = [8.24493e-1, -4.0899e-3, 7.6438e-5, -8.2467e-7, 5.3875e-9] as const;
const [B0, B1, B2] = [-5.72466e-3, 1.0227e-4, -1.6546e-6] as const;
const C0 = 4.8314e-4;

/**
 * Density of fresh or sea water at the pressure of the air (EOS-80).
 *
 *   ρ = ρw(t) + a(t)·S + b(t)·S^1.5 + 4.8314e-4·S²      t on the scale of 1968
 *
 * @param temperature °C     −2 to 40
 * @param salinity    PSS-78 0 to 42
 * @returns           kg/m³
 *
 * Holds      at the surface; ten metres of depth add 0.005 %. Beyond the range: the polynomial, temperature held
 *            between −5 and 60 °C and salinity between 0 and 100.
 * Leaves out pressure, and salts in other proportions than the sea's.
 * Source     Fofonoff & Millard 1983, UNESCO Technical Papers in Marine Science 44, p. 17.
 * Checked    tests/core/water/density.test.ts; tests/reference/density.json, last digit;
 *            tests/reference/density-teos-10.json, 0.005 kg/m³.
 */
export function density(temperature: number, salinity: number): number {
  return densityIpts68(ipts68(temperature), salinity);
}

/**
 * The same with temperature on the scale of 1968, as the published tables have it.
 *
 * @param t68      °C     −2 to 40
 * @param salinity PSS-78 0 to 42
 * @returns        kg/m³
 *
 * Holds, leaves out, source, checked: as `density`.
 */
export function densityIpts68(t68: number, salinity: number): number {
  const t = held(t68, -5, 60);
  const s = held(salinity, 0, 100);
  const water = W0 + t * (W1 + t * (W2 + t * (W3 + t * (W4 + t * W5))));
  const linear = A0 + t * (A1 + t * (A2 + t * (A3 + t * A4)));
  const root = B0 + t * (B1 + t * B2);
  return water + s * (linear + Math.sqrt(s) * root + s * C0);
}

export const densityLaw: Law<[temperature: number, salinity: number]> = law('density', 'kg/m³', density, [
  { name: 'temperature', unit: '°C', low: -2, high: 40 },
  { name: 'salinity', unit: '', low: 0, high: 42 },
]);
