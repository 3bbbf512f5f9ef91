import { CARBON_DIOXIDE, carbonDioxideSolubility, fugacityFactor } from './carbon-dioxide-saturation';
import { type CarbonateConstants, carbonAt, carbonDioxideShare, emptyConstants, phAt } from './carbonate-balance';
import { davies, freshPk1, freshPk2, freshPkw } from './carbonic-acid-fresh';
import { density } from './density';
import { held, type Law, law } from './law';

/**
 * Fills the constants of fresh water: pH by activity, as meters in the usual buffers have it.
 *
 * @param into          filled and returned; allocate one and use it again
 * @param temperature   °C    0 to 50
 * @param ionicStrength mol/L 0 for very soft water; of hard water about 1.5 times its alkalinity; 0 to 0.1
 * @returns             `into`, without boron
 *
 * Source     as the laws below.
 * Checked    tests/core/water/carbonate-fresh.test.ts.
 */
export function fillFreshConstants(
  into: CarbonateConstants,
  temperature: number,
  ionicStrength: number,
): CarbonateConstants {
  const once = davies(temperature, ionicStrength);
  const rho = density(temperature, 0);
  into.k1 = 10 ** -freshPk1(temperature) / once;
  into.k2 = 10 ** -freshPk2(temperature) / once ** 3;
  into.kb = 1;
  into.boron = 0;
  into.kw = (10 ** -freshPkw(temperature) / once) * rho;
  into.acid = rho / once;
  into.solubility = carbonDioxideSolubility(temperature, 0) * fugacityFactor(temperature) * rho;
  return into;
}

/** For the laws at the edges, which are no hot loop. */
const scratch = emptyConstants();

/**
 * pH of fresh water from its alkalinity and dissolved carbon.
 *
 * @param alkalinity    mol/m³ of charge, the same number as mmol/L or meq/L; 0.02 to 10
 * @param carbon        mol/m³ carbon dioxide, bicarbonate and carbonate together; 0.02 to 20
 * @param temperature   °C     0 to 50
 * @param ionicStrength mol/L  0 to 0.1
 * @returns             1      as a meter in the usual buffers reads it
 *
 * Holds      where carbonate and water carry the alkalinity. Beyond the range: the balance, pH held between 1 and 13.
 * Leaves out phosphate, humic acids, peat, "pH down" and every other acid or base; with them it is not this water.
 * Source     constants of `carbonic-acid-fresh.ts` (Plummer & Busenberg 1982, Davies) and `carbon-dioxide-saturation.ts`.
 * Checked    tests/core/water/carbonate-fresh.test.ts.
 */
export function freshPh(alkalinity: number, carbon: number, temperature: number, ionicStrength: number): number {
  return phAt(fillFreshConstants(scratch, temperature, ionicStrength), alkalinity, carbon, 7.5);
}

/**
 * Dissolved carbon of fresh water from its alkalinity and pH.
 *
 * @param alkalinity    mol/m³ as above
 * @param ph            1      5 to 9.5
 * @param temperature   °C     0 to 50
 * @param ionicStrength mol/L  0 to 0.1
 * @returns             mol/m³
 *
 * Holds, leaves out, source, checked: as `freshPh`.
 */
export function freshCarbon(alkalinity: number, ph: number, temperature: number, ionicStrength: number): number {
  return carbonAt(fillFreshConstants(scratch, temperature, ionicStrength), alkalinity, held(ph, 1, 13));
}

/**
 * Free carbon dioxide of fresh water from its alkalinity and pH.
 *
 * @param alkalinity    mol/m³ as above
 * @param ph            1      5 to 9.5
 * @param temperature   °C     0 to 50
 * @param ionicStrength mol/L  0 to 0.1
 * @returns             g/m³   the same number as mg/L; the chart 3·dKH·10^(7 − pH) shows 8 to 20 % less
 *
 * Holds, leaves out, source, checked: as `freshPh`.
 */
export function freshCarbonDioxide(alkalinity: number, ph: number, temperature: number, ionicStrength: number): number {
  const carbon = freshCarbon(alkalinity, ph, temperature, ionicStrength);
  return carbon * carbonDioxideShare(scratch, held(ph, 1, 13)) * CARBON_DIOXIDE;
}

/**
 * Free carbon dioxide of fresh water as the chart on the wall of many a shop has it.
 *
 *   CO2 = 3 · dKH · 10^(7 − pH)
 *
 * @param dkh °dKH carbonate hardness; 0.5 to 20
 * @param ph  1    6 to 8.5
 * @returns   g/m³ the same number as mg/L
 *
 * Holds      in fresh water, where carbonate is the only base and acid; 8 to 20 % low. Beyond the range: the formula, pH held
 *            between 0 and 14. In sea water it shows three to four times what is there: use `seaCarbonDioxide`.
 * Leaves out temperature, salt, and every other acid.
 * Source     from memory; agrees with the published targets at rfcandy.biz/carbon/co2_target.html.
 * Checked    tests/core/water/carbonate-fresh.test.ts; tests/reference/carbon-dioxide-chart.json.
 */
export function carbonDioxideChart(dkh: number, ph: number): number {
  return 3 * Math.max(0, dkh) * 10 ** (7 - held(ph, 0, 14));
}

const ALKALINITY = { name: 'alkalinity', unit: 'mol/m³', low: 0.02, high: 10 };
const CARBON = { name: 'carbon', unit: 'mol/m³', low: 0.02, high: 20 };
const PH = { name: 'pH', unit: '', low: 5, high: 9.5 };
const TEMPERATURE = { name: 'temperature', unit: '°C', low: 0, high: 50 };
const STRENGTH = { name: 'ionicStrength', unit: 'mol/L', low: 0, high: 0.1 };

type FreshLaw = Law<[alkalinity: number, other: number, temperature: number, ionicStrength: number]>;

export const freshPhLaw: FreshLaw = law('fresh-ph', '', freshPh, [ALKALINITY, CARBON, TEMPERATURE, STRENGTH]);
export const freshCarbonLaw: FreshLaw = law('fresh-carbon', 'mol/m³', freshCarbon, [
  ALKALINITY,
  PH,
  TEMPERATURE,
  STRENGTH,
]);
export const freshCarbonDioxideLaw: FreshLaw = law('fresh-carbon-dioxide', 'g/m³', freshCarbonDioxide, [
  ALKALINITY,
  PH,
  TEMPERATURE,
  STRENGTH,
]);
export const carbonDioxideChartLaw: Law<[dkh: number, ph: number]> = law(
  'carbon-dioxide-chart',
  'g/m³',
  carbonDioxideChart,
  [
    { name: 'dkh', unit: '°dKH', low: 0.5, high: 20 },
    { name: 'ph', unit: '', low: 6, high: 8.5 },
  ],
);
