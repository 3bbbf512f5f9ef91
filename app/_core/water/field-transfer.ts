import { gasTransferFactor } from './gas-transfer';
import { held, type Law, law } from './law';
import { oxygenSaturation } from './oxygen-saturation';

/**
 * Oxygen that an aerator gives in the tank it stands in, from what it gave in clean water without any oxygen.
 *
 *   OTR = SOTR · α · (C* − C) / C*20 · 1.024^(t − 20)      C*20 = 9.09 g/m³
 *
 * @param standard    g/h    SOTR, by the maker: at 20 °C, fresh water, one atmosphere, no oxygen; 0 to 1e6
 * @param alpha       1      what dirty water leaves of it; 1 clean, 0.4 to 0.8 with waste; 0 to 1.2
 * @param oxygen      g/m³   in the tank, the same number as mg/L; 0 to 30
 * @param temperature °C     0 to 40
 * @param salinity    PSS-78 0 to 40; its own saturation stands for the β of manuals
 * @param pressure    atm    of the air; 0.5 to 1.1
 * @returns           g/h    22 % of the label in sea water of 25 °C at 5 mg/L; below 0 it drives oxygen out
 *
 * Holds      for bubbles and surface aerators. Beyond the range: the formula, each argument held where its own law holds it, α
 *            and SOTR not below 0.
 * Leaves out fouled stones, salt's smaller bubbles (which help), and depth.
 * Source     field equation as at pe-calc.com/tools/oxygen-transfer; SOTR as in ASCE 2-06.
 * Checked    tests/core/water/oxidants.test.ts.
 */
export function fieldTransfer(
  standard: number,
  alpha: number,
  oxygen: number,
  temperature: number,
  salinity: number,
  pressure: number,
): number {
  const missing = oxygenSaturation(temperature, salinity, pressure) - held(oxygen, 0, 1e6);
  const clean = oxygenSaturation(20, 0, 1);
  return ((Math.max(0, standard) * Math.max(0, alpha) * missing) / clean) * gasTransferFactor(temperature);
}

export const fieldTransferLaw: Law<
  [standard: number, alpha: number, oxygen: number, temperature: number, salinity: number, pressure: number]
> = law('field-transfer', 'g/h', fieldTransfer, [
  { name: 'standard', unit: 'g/h', low: 0, high: 1e6 },
  { name: 'alpha', unit: '', low: 0, high: 1.2 },
  { name: 'oxygen', unit: 'g/m³', low: 0, high: 30 },
  { name: 'temperature', unit: '°C', low: 0, high: 40 },
  { name: 'salinity', unit: '', low: 0, high: 40 },
  { name: 'pressure', unit: 'atm', low: 0.5, high: 1.1 },
]);
