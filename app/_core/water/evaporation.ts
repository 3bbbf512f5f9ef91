import { LATENT_HEAT_SLOPE, latentHeat } from './latent-heat';
import { type Law, law } from './law';
import { salinityVapourFactor } from './salinity-vapour-factor';
import { vapourPressure, vapourPressureSlope } from './vapour-pressure';

/**
 * Water lost to the air.
 *
 *   w = K · (f(S)·e(t) − pa) / L(t)
 *
 * @param temperature °C     of the water; 0 to 40
 * @param salinity    PSS-78 0 to 40
 * @param airVapour   Pa     water vapour in the room, relative humidity × e(air temperature); 0 to 10 000
 * @param transfer    W/Pa   K, from `evaporationTransfer`; 0 to 10 000
 * @returns           kg/s   below 0 when the room is so moist that water condenses on the tank
 *
 * Holds      as `evaporationTransfer`: to a factor of two. Beyond the range: as the laws it is made of. Condensation is
 *            an extension of ours: the same coefficient, which was never measured for it.
 * Leaves out drops carried off by spray.
 * Source     as `evaporationTransfer`.
 * Checked    tests/core/water/evaporation.test.ts; tests/reference/evaporation.json.
 */
export function evaporation(temperature: number, salinity: number, airVapour: number, transfer: number): number {
  return evaporationHeat(temperature, salinity, airVapour, transfer) / latentHeat(temperature);
}

/**
 * Heat lost to the air by evaporation. It does not depend on the latent heat, which only says how much water goes.
 *
 *   Q = K · (f(S)·e(t) − pa)
 *
 * @param temperature °C     as above
 * @param salinity    PSS-78 as above
 * @param airVapour   Pa     as above
 * @param transfer    W/Pa   as above
 * @returns           W      above 0 when the water cools
 *
 * Holds, leaves out, source, checked: as `evaporation`.
 */
export function evaporationHeat(temperature: number, salinity: number, airVapour: number, transfer: number): number {
  return transfer * (salinityVapourFactor(salinity) * vapourPressure(temperature) - airVapour);
}

/**
 * How evaporation changes with the temperature of the water.
 *
 * @param temperature °C     as above
 * @param salinity    PSS-78 as above
 * @param airVapour   Pa     as above
 * @param transfer    W/Pa   as above
 * @returns           kg/(s·K)
 *
 * Holds, leaves out: as `evaporation`, of which it is the exact derivative.
 * Checked    against central differences.
 */
export function evaporationSlope(temperature: number, salinity: number, airVapour: number, transfer: number): number {
  const latent = latentHeat(temperature);
  const heat = evaporationHeat(temperature, salinity, airVapour, transfer);
  return (evaporationHeatSlope(temperature, salinity, transfer) - (heat * LATENT_HEAT_SLOPE) / latent) / latent;
}

/**
 * How the heat lost by evaporation changes with the temperature of the water.
 *
 * @param temperature °C     as above
 * @param salinity    PSS-78 as above
 * @param transfer    W/Pa   as above
 * @returns           W/K
 *
 * Holds, leaves out: as `evaporationHeat`, of which it is the exact derivative.
 * Checked    against central differences.
 */
export function evaporationHeatSlope(temperature: number, salinity: number, transfer: number): number {
  return transfer * salinityVapourFactor(salinity) * vapourPressureSlope(temperature);
}

export const evaporationLaw: Law<[temperature: number, salinity: number, airVapour: number, transfer: number]> = law(
  'evaporation',
  'kg/s',
  evaporation,
  [
    { name: 'temperature', unit: '°C', low: 0, high: 40 },
    { name: 'salinity', unit: '', low: 0, high: 40 },
    { name: 'airVapour', unit: 'Pa', low: 0, high: 1e4 },
    { name: 'transfer', unit: 'W/Pa', low: 0, high: 1e4 },
  ],
);
