import { BORON, boricPk, seaPkw } from './boric-acid';
import { aragonitePk, CALCIUM, calcitePk } from './calcium-carbonate';
import { CARBON_DIOXIDE, carbonDioxideSolubility, fugacityFactor } from './carbon-dioxide-saturation';
import {
  type CarbonateConstants,
  carbonAt,
  carbonateShare,
  carbonDioxideShare,
  emptyConstants,
  phAt,
} from './carbonate-balance';
import { brackishPk1, brackishPk2 } from './carbonic-acid-brackish';
import { seaPk1, seaPk2 } from './carbonic-acid-sea';
import { density } from './density';
import { held, type Law, law } from './law';

/** Salinities between which the constants go over from those for brackish water to those for the sea. */
const BRACKISH = 19;
const SEA = 25;

/**
 * Fills the constants of salt water: total pH scale, one atmosphere.
 *
 * @param into        filled and returned; allocate one and use it again
 * @param temperature °C     2 to 35
 * @param salinity    PSS-78 1 to 43; from 19 to 25 the constants go over from Millero 2010 to Lueker 2000 in a straight line
 *                           (common practice, no source), so that nothing jumps
 * @returns           `into`
 *
 * Costs about 2 µs, some fifteen exponentials and logarithms: fill once a step, not once a stage.
 *
 * Source     as the laws below.
 * Checked    tests/core/water/carbonate-sea.test.ts.
 */
export function fillSeaConstants(into: CarbonateConstants, temperature: number, salinity: number): CarbonateConstants {
  const salt = held((salinity - BRACKISH) / (SEA - BRACKISH), 0, 1);
  const rho = density(temperature, salinity);
  const pk1 = (1 - salt) * brackishPk1(temperature, salinity) + salt * seaPk1(temperature, salinity);
  const pk2 = (1 - salt) * brackishPk2(temperature, salinity) + salt * seaPk2(temperature, salinity);
  into.k1 = 10 ** -pk1;
  into.k2 = 10 ** -pk2;
  into.kb = 10 ** -boricPk(temperature, salinity);
  into.boron = BORON * Math.max(0, salinity) * rho;
  into.kw = 10 ** -seaPkw(temperature, salinity) * rho;
  into.acid = rho;
  into.solubility = carbonDioxideSolubility(temperature, salinity) * fugacityFactor(temperature) * rho;
  return into;
}

/** For the laws at the edges, which are no hot loop. */
const scratch = emptyConstants();

/**
 * pH of salt water from its alkalinity and dissolved carbon.
 *
 * @param alkalinity  mol/m³ of charge, the same number as mmol/L or meq/L; 0.1 to 10
 * @param carbon      mol/m³ carbon dioxide, bicarbonate and carbonate together; 0.1 to 20
 * @param temperature °C     2 to 35
 * @param salinity    PSS-78 1 to 43
 * @returns           1      on the total scale; `fromTotalScale` says what a meter reads
 *
 * Holds      where carbonate, borate and water carry the alkalinity. Beyond the range: the balance, pH held between 1 and 13.
 * Leaves out phosphate, silicate, ammonia and organic acids.
 * Source     constants of `carbonic-acid-sea.ts`, `carbonic-acid-brackish.ts`, `boric-acid.ts`, `carbon-dioxide-saturation.ts`;
 *            the balance as in Dickson and others 2007, handbook.
 * Checked    tests/core/water/carbonate-sea.test.ts: ten whole systems by PyCO2SYS.
 */
export function seaPh(alkalinity: number, carbon: number, temperature: number, salinity: number): number {
  return phAt(fillSeaConstants(scratch, temperature, salinity), alkalinity, carbon, 8);
}

/**
 * Dissolved carbon of salt water from its alkalinity and pH.
 *
 * @param alkalinity  mol/m³ as above
 * @param ph          1      on the total scale; 6 to 9.5
 * @param temperature °C     2 to 35
 * @param salinity    PSS-78 1 to 43
 * @returns           mol/m³
 *
 * Holds, leaves out, source, checked: as `seaPh`.
 */
export function seaCarbon(alkalinity: number, ph: number, temperature: number, salinity: number): number {
  return carbonAt(fillSeaConstants(scratch, temperature, salinity), alkalinity, held(ph, 1, 13));
}

/**
 * Free carbon dioxide of salt water from its alkalinity and pH.
 *
 * @param alkalinity  mol/m³ as above
 * @param ph          1      on the total scale; 6 to 9.5
 * @param temperature °C     2 to 35
 * @param salinity    PSS-78 1 to 43
 * @returns           g/m³   the same number as mg/L; the chart for fresh water would show three to four times as much
 *
 * Holds, leaves out, source, checked: as `seaPh`.
 */
export function seaCarbonDioxide(alkalinity: number, ph: number, temperature: number, salinity: number): number {
  const carbon = seaCarbon(alkalinity, ph, temperature, salinity);
  return carbon * carbonDioxideShare(scratch, held(ph, 1, 13)) * CARBON_DIOXIDE;
}

/**
 * How far salt water is saturated with aragonite, from its alkalinity and pH.
 *
 *   Ω = [calcium]·[carbonate]/Ksp
 *
 * @param alkalinity  mol/m³ as above
 * @param ph          1      on the total scale; 6 to 9.5
 * @param temperature °C     5 to 35
 * @param salinity    PSS-78 5 to 43
 * @returns           1      below 1 it dissolves
 *
 * Holds      for calcium in the sea's proportion to salinity; otherwise as `seaPh`. Calcite: `calciteSaturation`.
 * Leaves out, source, checked: as `seaPh` and `aragonitePk`.
 */
export function aragoniteSaturation(alkalinity: number, ph: number, temperature: number, salinity: number): number {
  return ionProduct(alkalinity, ph, temperature, salinity) * 10 ** aragonitePk(temperature, salinity);
}

/**
 * The same for calcite.
 *
 * @param alkalinity  mol/m³ as above
 * @param ph          1      on the total scale; 6 to 9.5
 * @param temperature °C     5 to 35
 * @param salinity    PSS-78 5 to 43
 * @returns           1      below 1 it dissolves
 *
 * Source     as `aragoniteSaturation`.
 * Checked    tests/core/water/carbonate-sea.test.ts.
 */
export function calciteSaturation(alkalinity: number, ph: number, temperature: number, salinity: number): number {
  return ionProduct(alkalinity, ph, temperature, salinity) * 10 ** calcitePk(temperature, salinity);
}

/** (mol/kg)²: calcium times carbonate. */
function ionProduct(alkalinity: number, ph: number, temperature: number, salinity: number): number {
  const carbon = seaCarbon(alkalinity, ph, temperature, salinity);
  const carbonate = carbon * carbonateShare(scratch, held(ph, 1, 13));
  return (CALCIUM * Math.max(0, salinity) * carbonate) / density(temperature, salinity);
}

const ALKALINITY = { name: 'alkalinity', unit: 'mol/m³', low: 0.1, high: 10 };
const CARBON = { name: 'carbon', unit: 'mol/m³', low: 0.1, high: 20 };
const PH = { name: 'pH', unit: '', low: 6, high: 9.5 };
const TEMPERATURE = { name: 'temperature', unit: '°C', low: 2, high: 35 };
const SALINITY = { name: 'salinity', unit: '', low: 1, high: 43 };

type SeaLaw = Law<[alkalinity: number, other: number, temperature: number, salinity: number]>;

export const seaPhLaw: SeaLaw = law('sea-ph', '', seaPh, [ALKALINITY, CARBON, TEMPERATURE, SALINITY]);
export const seaCarbonLaw: SeaLaw = law('sea-carbon', 'mol/m³', seaCarbon, [ALKALINITY, PH, TEMPERATURE, SALINITY]);
export const seaCarbonDioxideLaw: SeaLaw = law('sea-carbon-dioxide', 'g/m³', seaCarbonDioxide, [
  ALKALINITY,
  PH,
  TEMPERATURE,
  SALINITY,
]);
const WARMER = { ...TEMPERATURE, low: 5 };
const SALTIER = { ...SALINITY, low: 5 };
export const aragoniteSaturationLaw: SeaLaw = law('aragonite-saturation', '', aragoniteSaturation, [
  ALKALINITY,
  PH,
  WARMER,
  SALTIER,
]);
