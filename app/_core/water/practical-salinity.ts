import { ipts68 } from './ipts-68';
import { held, type Law, law } from './law';

/** mS/cm of sea water of salinity 35 at 15 °C: a convention (Culkin & Smith 1980), not part of the scale itself. */
const STANDARD = 42.914;
const [C0, C1, C2, C3, C4] = [0.6766097, 2.00564e-2, 1.104259e-4, -6.9698e-7, 1.0031e-9] as const;
const [A0, A1, A2, A3, A4, A5] = [0.008, -0.1692, 25.3851, 14.0941, -7.0261, 2.7081] as const;
const [B0, B1, B2, B3, B4, B5] = [0.0005, -0.0056, -0.0066, -0.0375, 0.0636, -0.0144] as const;
/** 0.0162; a manual that prints 0.00162 is wrong. */
const K = 0.0162;
/** Below this salinity the extension of Hill and others applies. */
const HILL = 2;
/** Square root of the ratio: below the first salinity would fall again, the second is far beyond any sea. */
const LEAST = 0.003;
const MOST = 2;

/**
 * Practical salinity from the conductivity of the water as it is, not compensated to any temperature (PSS-78).
 *
 *   S = Σ a·R^(i/2) + (t − 15)/(1 + 0.0162·(t − 15)) · Σ b·R^(i/2)      R = C/(42.914 · rt(t)), t on the scale of 1968
 *
 * @param conductivity mS/cm  raw; a reading "at 25 °C" is compensated: see `rawConductivity`
 * @param temperature  °C     of that water; −2 to 35
 * @returns            PSS-78 0 to 42; below 2 by the extension of Hill and others 1986
 *
 * Holds      for salts in the proportions of the sea. Beyond the range: the formula, temperature held between −5 and 60 °C,
 *            conductivity at what salinity 0 and about 190 would have.
 * Leaves out pressure, and other salts: in a fresh-water system it is a figure without meaning.
 * Source     Fofonoff & Millard 1983, UNESCO Technical Papers in Marine Science 44, p. 6; below 2 Hill, Dauphinee & Woods 1986
 *            as in R package wq (github.com/cran/wq).
 * Checked    tests/core/water/practical-salinity.test.ts; tests/reference/practical-salinity.json.
 */
export function practicalSalinity(conductivity: number, temperature: number): number {
  const t68 = ipts68(temperature);
  return salinityFromRatio(conductivity / (STANDARD * ratioAtTemperature(t68)), t68);
}

/**
 * Conductivity of water of a practical salinity: the inverse of `practicalSalinity`, by halving.
 *
 * @param salinity    PSS-78 0 to 42
 * @param temperature °C     −2 to 35
 * @returns           mS/cm  raw, at that temperature
 *
 * Holds, leaves out, source: as `practicalSalinity`. Beyond the range: salinity held at 0 and about 190.
 * Checked    tests/core/water/practical-salinity.test.ts; tests/reference/conductivity-ratio.json.
 */
export function conductivity(salinity: number, temperature: number): number {
  return STANDARD * conductivityRatio(salinity, ipts68(temperature));
}

/**
 * Conductivity of sea water of salinity 35 at a temperature, against that at 15 °C.
 *
 * @param t68 °C on the scale of 1968; −2 to 35
 * @returns   1
 *
 * Source     as `practicalSalinity`.
 * Checked    tests/core/water/practical-salinity.test.ts, through the published ratios.
 */
export function ratioAtTemperature(t68: number): number {
  const t = held(t68, -5, 60);
  return C0 + t * (C1 + t * (C2 + t * (C3 + t * C4)));
}

/**
 * The scale itself: practical salinity from the ratio to sea water of salinity 35 at the same temperature.
 *
 * @param ratio 1      Rt; 0 to 4
 * @param t68   °C     on the scale of 1968
 * @returns     PSS-78
 *
 * Holds, leaves out, source, checked: as `practicalSalinity`.
 */
export function salinityFromRatio(ratio: number, t68: number): number {
  return salinityFromRoot(Math.sqrt(held(ratio, LEAST * LEAST, MOST * MOST)), held(t68, -5, 60));
}

function salinityFromRoot(q: number, t: number): number {
  const warm = (t - 15) / (1 + K * (t - 15));
  const a = A0 + q * (A1 + q * (A2 + q * (A3 + q * (A4 + q * A5))));
  const b = B0 + q * (B1 + q * (B2 + q * (B3 + q * (B4 + q * B5))));
  const plain = a + warm * b;
  if (plain >= HILL) return plain;
  const x = 400 * q * q;
  const y = 10 * q;
  const salty = A0 / (1 + x * (1.5 + x)) + (B0 * warm) / (1 + y * (1 + y * (1 + y)));
  return Math.max(0, plain - salty);
}

/**
 * Conductivity against that of sea water of salinity 35 at 15 °C, on the scale of 1968 as the published tables have it.
 *
 * @param salinity PSS-78 0 to 42
 * @param t68      °C     −2 to 35
 * @returns        1      R
 *
 * Holds, leaves out, source, checked: as `conductivity`.
 */
export function conductivityRatio(salinity: number, t68: number): number {
  const t = held(t68, -5, 60);
  const wanted = salinity;
  let [low, high] = [LEAST, MOST];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (salinityFromRoot(middle, t) < wanted) low = middle;
    else high = middle;
  }
  // So that a broken figure is not lost in the halving.
  return Number.isNaN(wanted + t) ? Number.NaN : ((low + high) / 2) ** 2 * ratioAtTemperature(t);
}

export const practicalSalinityLaw: Law<[conductivity: number, temperature: number]> = law(
  'practical-salinity',
  '',
  practicalSalinity,
  [
    { name: 'conductivity', unit: 'mS/cm', low: 0, high: 75 },
    { name: 'temperature', unit: '°C', low: -2, high: 35 },
  ],
);

export const conductivityLaw: Law<[salinity: number, temperature: number]> = law(
  'conductivity',
  'mS/cm',
  conductivity,
  [
    { name: 'salinity', unit: '', low: 0, high: 42 },
    { name: 'temperature', unit: '°C', low: -2, high: 35 },
  ],
);
