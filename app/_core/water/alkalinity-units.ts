import { density } from './density';
import { type Law, law } from './law';

/** mg of calcium carbonate for a millimole of charge: half of 100.0869 g/mol. */
export const CALCIUM_CARBONATE_PER_CHARGE = 50.0435;

/** mg/L of calcium carbonate in a degree of carbonate hardness: 10 mg/L of calcium oxide, 56.08 and 100.09 g/mol. */
export const CALCIUM_CARBONATE_PER_DEGREE = 17.848;

/**
 * Alkalinity from degrees of carbonate hardness.
 *
 *   A = dKH · 17.848 / 50.0435
 *
 * @param degrees °dKH   0 to 30
 * @returns       mol/m³ of charge, the same number as mmol/L and meq/L; 0.35665 for one degree
 *
 * Holds      by definition. Others print 17.86, 0.07 % more. Beyond the range: the same line, nothing below nothing.
 * Leaves out what carries it: a test measures all of the alkalinity, not carbonate alone.
 * Source     definition of the German degree, 10 mg/L of CaO (encnc.com/d515195.html).
 * Checked    tests/core/water/feed-and-alkalinity.test.ts.
 */
export function alkalinityFromDegrees(degrees: number): number {
  return (Math.max(0, degrees) * CALCIUM_CARBONATE_PER_DEGREE) / CALCIUM_CARBONATE_PER_CHARGE;
}

/**
 * Alkalinity from milligrams of calcium carbonate in a litre.
 *
 * @param milligrams mg/L   as CaCO3, also called ppm; 0 to 500
 * @returns          mol/m³ of charge
 *
 * Holds, leaves out, source, checked: as `alkalinityFromDegrees`.
 */
export function alkalinityFromCalciumCarbonate(milligrams: number): number {
  return Math.max(0, milligrams) / CALCIUM_CARBONATE_PER_CHARGE;
}

/**
 * Alkalinity in the unit of oceanographers.
 *
 * @param alkalinity  mol/m³  of charge; 0 to 10
 * @param temperature °C      −2 to 40
 * @param salinity    PSS-78  0 to 42
 * @returns           µmol/kg 2439 for 7 dKH in sea water of 35 at 25 °C
 *
 * Holds, leaves out, source, checked: as `alkalinityFromDegrees`, with density as in `density.ts`.
 */
export function alkalinityPerKilogram(alkalinity: number, temperature: number, salinity: number): number {
  return (1e6 * Math.max(0, alkalinity)) / density(temperature, salinity);
}

export const alkalinityFromDegreesLaw: Law<[degrees: number]> = law(
  'alkalinity-from-degrees',
  'mol/m³',
  alkalinityFromDegrees,
  [{ name: 'degrees', unit: '°dKH', low: 0, high: 30 }],
);

export const alkalinityFromCalciumCarbonateLaw: Law<[milligrams: number]> = law(
  'alkalinity-from-calcium-carbonate',
  'mol/m³',
  alkalinityFromCalciumCarbonate,
  [{ name: 'milligrams', unit: 'mg/L', low: 0, high: 500 }],
);

export const alkalinityPerKilogramLaw: Law<[alkalinity: number, temperature: number, salinity: number]> = law(
  'alkalinity-per-kilogram',
  'µmol/kg',
  alkalinityPerKilogram,
  [
    { name: 'alkalinity', unit: 'mol/m³', low: 0, high: 10 },
    { name: 'temperature', unit: '°C', low: -2, high: 40 },
    { name: 'salinity', unit: '', low: 0, high: 42 },
  ],
);
