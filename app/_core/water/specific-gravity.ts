import { density } from './density';
import { held, type Law, law } from './law';

/** °C of water and of reference: the conventions in use. A specific gravity without its convention is not a figure. */
export const GRAVITY_CONVENTIONS = {
  '25/25 °C': [25, 25],
  '20/20 °C': [20, 20],
  '60/60 °F': [140 / 9, 140 / 9],
  '25/4 °C': [25, 4],
} as const;

const SALTIEST = 100;

/**
 * Specific gravity of fresh or sea water.
 *
 *   SG = ρ(S, t) / ρ(0, t0)
 *
 * @param salinity    PSS-78 0 to 42
 * @param temperature °C     of the water when it is weighed; −2 to 40
 * @param reference   °C     of the fresh water it is held against: 25, 20, 15.56 (60 °F) or 4; 0 to 40
 * @returns           1      1.0264 for salinity 35 at 25/25 °C, but 1.0234 at 25/4 °C
 *
 * Holds      as `density`, of which it is a ratio. Beyond the range: likewise.
 * Leaves out the instrument: see `hydrometerSalinity`.
 * Source     definition; density by Fofonoff & Millard 1983, UNESCO Technical Papers in Marine Science 44.
 * Checked    tests/core/water/specific-gravity.test.ts; tests/reference/specific-gravity.json.
 */
export function specificGravity(salinity: number, temperature: number, reference: number): number {
  return density(temperature, salinity) / density(reference, 0);
}

/**
 * Salinity of water of a specific gravity: the inverse of `specificGravity`, by halving.
 *
 * @param gravity     1      1 to 1.035
 * @param temperature °C     of the water; −2 to 40
 * @param reference   °C     as above
 * @returns           PSS-78 held between 0 and 100
 *
 * Holds, leaves out, source, checked: as `specificGravity`.
 */
export function salinityFromGravity(gravity: number, temperature: number, reference: number): number {
  return salinityFromDensity(gravity * density(reference, 0), temperature);
}

/** Salinity of water of a density (kg/m³) at a temperature, held between 0 and 100. */
function salinityFromDensity(rho: number, temperature: number): number {
  if (Number.isNaN(rho + temperature)) return Number.NaN;
  let low = 0;
  let high = SALTIEST;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (density(temperature, middle) < rho) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** 1/K: how much the glass of a hydrometer grows (soda glass, from memory). */
const GLASS = 25e-6;

/**
 * Salinity from a glass hydrometer that is read in water of another temperature than it was made for.
 *
 *   ρ = reading · ρ(0, t0) · (1 − 25e-6·(t − t0))
 *
 * @param reading     1      1 to 1.035
 * @param temperature °C     of the water; 0 to 40
 * @param reference   °C     at which the hydrometer reads right, on its paper: often 15.56 (60 °F) or 25; 0 to 40
 * @returns           PSS-78 ± 0.5 at best; held between 0 and 100
 *
 * Holds      for a clean glass one, read at the surface and not at the rim. Beyond the range: likewise, temperature held between
 *            −5 and 60 °C.
 * Leaves out bubbles, salt on the stem, and swing-arm ones. A published table for 60 °F lies 0.3 to 0.35 lower than this.
 * Source     definition, with density as in `density.ts`; growth of glass from memory.
 * Checked    tests/core/water/specific-gravity.test.ts; tests/reference/hydrometer-salinity.json, ± 0.5.
 */
export function hydrometerSalinity(reading: number, temperature: number, reference: number): number {
  const grown = 1 - GLASS * (held(temperature, -5, 60) - held(reference, -5, 60));
  return salinityFromDensity(reading * density(reference, 0) * grown, temperature);
}

const GRAVITY = { name: 'gravity', unit: '', low: 1, high: 1.035 };
const TEMPERATURE = { name: 'temperature', unit: '°C', low: -2, high: 40 };
const REFERENCE = { name: 'reference', unit: '°C', low: 0, high: 40 };

type GravityLaw = Law<[first: number, temperature: number, reference: number]>;

export const specificGravityLaw: GravityLaw = law('specific-gravity', '', specificGravity, [
  { name: 'salinity', unit: '', low: 0, high: 42 },
  TEMPERATURE,
  REFERENCE,
]);
export const salinityFromGravityLaw: GravityLaw = law('salinity-from-gravity', '', salinityFromGravity, [
  GRAVITY,
  TEMPERATURE,
  REFERENCE,
]);
export const hydrometerSalinityLaw: GravityLaw = law('hydrometer-salinity', '', hydrometerSalinity, [
  { ...GRAVITY, name: 'reading' },
  { ...TEMPERATURE, low: 0 },
  REFERENCE,
]);
