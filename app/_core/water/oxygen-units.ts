import { density } from './density';
import { type Law, law } from './law';
import { oxygenSaturation } from './oxygen-saturation';

/** g/mol of oxygen. */
export const OXYGEN = 31.9988;

/** mg of oxygen in a mL of the gas at 0 °C and one atmosphere. */
export const OXYGEN_PER_MILLILITRE = 1.42905;

/**
 * Dissolved oxygen as a part of what water in balance with the air would hold.
 *
 *   % = 100 · C / C*(t, S, P)
 *
 * @param oxygen      g/m³   the same number as mg/L; 0 to 60
 * @param temperature °C     0 to 40
 * @param salinity    PSS-78 0 to 40; forgotten, sea water at 25 °C reads 73 % for 89 %
 * @param pressure    atm    of the air where the tank stands, as field meters have it; some oceanographers take 1
 * @returns           %
 *
 * Holds      as `oxygenSaturation`. Beyond the range: likewise; less than nothing counts as nothing.
 * Leaves out what a meter assumes of salinity and pressure: a reading in mg/L is only as good as those.
 * Source     definition; saturation by Benson & Krause 1984.
 * Checked    tests/core/water/oxygen-units.test.ts.
 */
export function oxygenPercent(oxygen: number, temperature: number, salinity: number, pressure: number): number {
  return (100 * Math.max(0, oxygen)) / oxygenSaturation(temperature, salinity, pressure);
}

/**
 * Dissolved oxygen in the unit of oceanographers.
 *
 *   1000 · C / 31.9988 / (ρ/1000)
 *
 * @param oxygen      g/m³     the same number as mg/L; 0 to 60
 * @param temperature °C       −2 to 40
 * @param salinity    PSS-78   0 to 42
 * @returns           µmol/kg
 *
 * Holds      as `density`. Beyond the range: likewise.
 * Leaves out nothing.
 * Source     definition; mL/L by USGS memorandum 2011.03 as in LakeMetabolizer (github.com/GLEON/LakeMetabolizer): 1.42905 mg in
 *            a mL. Older code has 1.4276, 0.1 % less.
 * Checked    tests/core/water/oxygen-units.test.ts.
 */
export function oxygenMicromoles(oxygen: number, temperature: number, salinity: number): number {
  return (1e6 * oxygen) / OXYGEN / density(temperature, salinity);
}

const OXYGEN_ARGUMENT = { name: 'oxygen', unit: 'g/m³', low: 0, high: 60 };

export const oxygenPercentLaw: Law<[oxygen: number, temperature: number, salinity: number, pressure: number]> = law(
  'oxygen-percent',
  '%',
  oxygenPercent,
  [
    OXYGEN_ARGUMENT,
    { name: 'temperature', unit: '°C', low: 0, high: 40 },
    { name: 'salinity', unit: '', low: 0, high: 40 },
    { name: 'pressure', unit: 'atm', low: 0.5, high: 1.1 },
  ],
);

export const oxygenMicromolesLaw: Law<[oxygen: number, temperature: number, salinity: number]> = law(
  'oxygen-micromoles',
  'µmol/kg',
  oxygenMicromoles,
  [
    OXYGEN_ARGUMENT,
    { name: 'temperature', unit: '°C', low: -2, high: 40 },
    { name: 'salinity', unit: '', low: 0, high: 42 },
  ],
);
