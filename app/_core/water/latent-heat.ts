import { type Law, law } from './law';

/** J/(kg·K): the slope of `latentHeat`, the same everywhere. */
export const LATENT_HEAT_SLOPE = -2370;

/**
 * Heat that a kilogram of water takes with it when it evaporates.
 *
 *   L = 2 501 000 − 2370·t
 *
 * @param temperature °C   of the water surface; 0 to 40
 * @returns           J/kg 2.442 million at 25 °C
 *
 * Holds      within 0.15 kJ/kg of steam tables up to 20 °C. Beyond the range: the same line. The 2257 kJ/kg often quoted
 *            belong to boiling water and are 8 % too little here.
 * Leaves out salt, which changes it by less than 0.01 %.
 * Source     Stull 1988, as in R package bigleaf, latent.heat.vaporization (rdrr.io/cran/bigleaf).
 * Checked    tests/core/water/latent-heat.test.ts; tests/reference/latent-heat.json.
 */
export function latentHeat(temperature: number): number {
  return 2.501e6 + LATENT_HEAT_SLOPE * temperature;
}

export const latentHeatLaw: Law<[temperature: number]> = law('latent-heat', 'J/kg', latentHeat, [
  { name: 'temperature', unit: '°C', low: 0, high: 40 },
]);
