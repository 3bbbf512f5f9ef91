import { held, KELVIN, type Law, law } from './law';

/** Power of body mass by which the oxygen use of fish grows (69 species: 0.80 pooled; species' own mean 0.79 ± 0.11). */
export const MASS_EXPONENT = 0.8;

/** °C at which `respirationFactor` is 1. */
export const RESPIRATION_REFERENCE = 20;

/** K: the Arrhenius slope, and ln R of a 50 g fish at 1/T = 0, in mmol/h. */
const ARRHENIUS = 5020;
const INTERCEPT = 15.7;
const REFERENCE_MASS = 0.05;
const GRAMS_PER_MMOL = 0.0319988;

const COLDEST = -20;
const HOTTEST = 60;

/**
 * Oxygen that one resting fish uses.
 *
 *   R = e^(15.7 − 5020/T) · (M / 50 g)^0.80 mmol/h
 *
 * @param temperature °C  0 to 30
 * @param mass        kg  of one fish; 0.0001 to 100
 * @returns           g/s of oxygen
 *
 * Holds      as the mean over bony fish at rest; single species lie between a quarter and three times it. Beyond the range:
 *            the formula, temperature held between −20 and 60 °C; no mass uses nothing.
 * Leaves out feeding and fright (two to three times more, from memory), one species' own stronger answer to a sudden
 *            change (median Q10 2.40 against 1.83 here), the drop in thin water, and animals that are not bony fish.
 * Source     Clarke & Johnston 1999, Journal of Animal Ecology 68, 893, abstract (ouci.dntb.gov.ua/en/works/7nJdzmP7).
 *            Not their pooled line ln R = 0.80 ln M − 5.43, which mixes all temperatures and gives a third of this.
 * Checked    tests/core/water/respiration.test.ts; tests/reference/respiration.json.
 */
export function respiration(temperature: number, mass: number): number {
  return respirationAtReference(mass) * respirationFactor(temperature);
}

/**
 * Oxygen that one resting fish uses at 20 °C: the part of `respiration` that temperature does not change.
 *
 * @param mass kg  of one fish; 0.0001 to 100
 * @returns    g/s of oxygen; 0 for no mass
 *
 * Holds, leaves out, source, checked: as `respiration`.
 */
export function respirationAtReference(mass: number): number {
  const of50g = Math.exp(INTERCEPT - ARRHENIUS / (RESPIRATION_REFERENCE + KELVIN));
  return (of50g * GRAMS_PER_MMOL * (Math.max(0, mass) / REFERENCE_MASS) ** MASS_EXPONENT) / 3600;
}

/**
 * Oxygen use at a temperature as a multiple of that at 20 °C.
 *
 *   e^(5020·(1/293.15 − 1/T))
 *
 * @param temperature °C 0 to 30
 * @returns           a pure number, 1 at 20 °C
 *
 * Holds, leaves out, source, checked: as `respiration`.
 */
export function respirationFactor(temperature: number): number {
  const T = held(temperature, COLDEST, HOTTEST) + KELVIN;
  return Math.exp(ARRHENIUS * (1 / (RESPIRATION_REFERENCE + KELVIN) - 1 / T));
}

/**
 * How that multiple changes with temperature.
 *
 * @param temperature °C as above
 * @returns           1/K; 0 where temperature is held
 *
 * Holds, leaves out, source: as `respirationFactor`, of which it is the exact derivative.
 * Checked    against central differences.
 */
export function respirationFactorSlope(temperature: number): number {
  return respirationFactor(temperature) * respirationLogSlope(temperature);
}

/**
 * The same slope as a part of the multiple itself, for whoever has the multiple already.
 *
 * @param temperature °C  as above
 * @returns           1/K 0 where temperature is held
 *
 * Holds, leaves out, source: as `respirationFactor`.
 * Checked    through `respirationFactorSlope`, which is made from it.
 */
export function respirationLogSlope(temperature: number): number {
  if (temperature < COLDEST || temperature > HOTTEST) return 0;
  const T = temperature + KELVIN;
  return ARRHENIUS / (T * T);
}

export const respirationLaw: Law<[temperature: number, mass: number]> = law('respiration', 'g/s', respiration, [
  { name: 'temperature', unit: '°C', low: 0, high: 30 },
  { name: 'mass', unit: 'kg', low: 1e-4, high: 100 },
]);
