import { type Law, law } from './law';

/** Part of the water that always stays, so that the last drop holds salt and not infinity. */
const LEAST_LEFT = 1e-6;

/**
 * Salinity of a system that evaporates and is not topped off: the salt stays.
 *
 *   S = S0·V / (V − lost)
 *
 * @param salinity PSS-78 before; 0 to 100
 * @param volume   m³     before; 0.0001 to 1e6
 * @param lost     m³     evaporated; 0 to less than the volume
 * @returns        PSS-78
 *
 * Holds      until salts fall out, far beyond anything that lives. Beyond the range: less than nothing lost counts as
 *            nothing; when all is lost, a millionth of the volume is taken to remain.
 * Leaves out skimmate and splash, which take salt with them.
 * Source     Conservation of salt.
 * Checked    tests/core/water/dilution.test.ts: closed form, and the salt before and after.
 */
export function concentrationByEvaporation(salinity: number, volume: number, lost: number): number {
  const share = Math.max(0, lost) / Math.max(1e-9, volume);
  return salinity / Math.max(LEAST_LEFT, 1 - share);
}

export const concentrationByEvaporationLaw: Law<[salinity: number, volume: number, lost: number]> = law(
  'concentration-by-evaporation',
  '',
  concentrationByEvaporation,
  [
    { name: 'salinity', unit: '', low: 0, high: 100 },
    { name: 'volume', unit: 'm³', low: 1e-4, high: 1e6 },
    { name: 'lost', unit: 'm³', low: 0, high: 1e6 },
  ],
  (_salinity, volume, lost) => (lost < volume ? null : `lost is ${lost}, not less than the volume of ${volume} m³`),
);
