import { type Law, law } from './law';

/** Part by which conductivity rises with each degree, as many meters are set when they leave the maker. */
export const COMPENSATION = 0.0191;

/**
 * What a meter shows that compensates its reading to a reference temperature.
 *
 *   Cref = C / (1 + α·(t − tref))
 *
 * @param raw         mS/cm of the water as it is; 0 to 120
 * @param temperature °C    of the water; 0 to 40
 * @param reference   °C    mostly 25, on some meters 20; 15 to 25
 * @param coefficient 1/K   α; 0.0191 unless the meter says otherwise; 0.01 to 0.03
 * @returns           mS/cm at the reference temperature, as the meter has it
 *
 * Holds      for sea water within 0.4 % from 15 to 30 °C and 0.6 % at 10 °C (0.14 and 0.2 of salinity). Beyond the range:
 *            the formula, the divisor never below 0.1.
 * Leaves out that the true coefficient changes with temperature and salt.
 * Source     manual of a conductivity meter, default of 1.91 % per degree (azmanual.top/manuals/310656, p. 32).
 * Checked    tests/core/water/practical-salinity.test.ts; tests/reference/compensated-conductivity.json.
 */
export function compensatedConductivity(
  raw: number,
  temperature: number,
  reference: number,
  coefficient: number,
): number {
  return raw / factor(temperature, reference, coefficient);
}

/**
 * The raw conductivity behind a compensated reading: the inverse, and what `practicalSalinity` needs.
 *
 * @param compensated mS/cm as read; 0 to 120
 * @param temperature °C    of the water; 0 to 40
 * @param reference   °C    as above
 * @param coefficient 1/K   as above
 * @returns           mS/cm of the water as it is
 *
 * Holds, leaves out, source, checked: as `compensatedConductivity`. Fed as it is, a reading of 53 "at 25 °C" in water of
 * 20 °C would pass for a salinity of 39 instead of 35.
 */
export function rawConductivity(
  compensated: number,
  temperature: number,
  reference: number,
  coefficient: number,
): number {
  return compensated * factor(temperature, reference, coefficient);
}

function factor(temperature: number, reference: number, coefficient: number): number {
  return Math.max(0.1, 1 + coefficient * (temperature - reference));
}

const ARGUMENTS = [
  { name: 'temperature', unit: '°C', low: 0, high: 40 },
  { name: 'reference', unit: '°C', low: 15, high: 25 },
  { name: 'coefficient', unit: '1/K', low: 0.01, high: 0.03 },
] as const;

type CompensationLaw = Law<[conductivity: number, temperature: number, reference: number, coefficient: number]>;

export const compensatedConductivityLaw: CompensationLaw = law(
  'compensated-conductivity',
  'mS/cm',
  compensatedConductivity,
  [{ name: 'raw', unit: 'mS/cm', low: 0, high: 120 }, ...ARGUMENTS],
);

export const rawConductivityLaw: CompensationLaw = law('raw-conductivity', 'mS/cm', rawConductivity, [
  { name: 'compensated', unit: 'mS/cm', low: 0, high: 120 },
  ...ARGUMENTS,
]);
