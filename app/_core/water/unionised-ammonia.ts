import type { PhScale } from '../facility/system';
import { ammoniaPkFree, ammoniaPkFresh, ammoniaPkTotal } from './ammonia-pk';
import { held, type Law, law } from './law';
import { nbsAboveTotal } from './ph-scales';

/** Mass of ammonia for one of the nitrogen in it: 17.0305 g/mol over 14.0067 g/mol. */
export const AMMONIA_PER_NITROGEN = 17.0305 / 14.0067;

/** Far beyond any water; keeps the power from overflowing. */
const UTMOST_PH = 50;

/**
 * Part of the ammonia that is un-ionised, the part that poisons: NH3 of NH3 and NH4⁺ together, as nitrogen or as ammonia.
 *
 *   f = 1 / (1 + 10^(pK − pH))
 *
 * @param ph          1      as read; 6 to 10
 * @param scale              that the pH is on; a meter calibrated in buffers of 4, 7 and 10 is on `nbs`. Read as total, its
 *                           reading overstates f by a third in sea water. In fresh water all scales are one.
 * @param temperature °C     0 to 40
 * @param salinity    PSS-78 0 to 40; 0 is fresh water
 * @returns           1      0 to 1; times total ammonia nitrogen (g/m³) it is un-ionised ammonia nitrogen
 *
 * Holds      within 5 % of f. Its slope by pH is `unionisedShareByPh`; from fresh water to the least salt it falls by 0.5 %.
 *            Beyond the range: the formula, each argument held as the laws of pK and of the scales hold it.
 * Leaves out salts other than the sea's, and the electrode's own error: 0.05 of pH are 12 % of f.
 * Source     fresh water Emerson and others 1975; with salt Clegg & Whitfield 1995 (see `ammonia-pk.ts`), a pH on the NBS
 *            scale first brought to the total scale (see `ph-scales.ts`).
 * Checked    tests/core/water/unionised-ammonia.test.ts; tests/reference/unionised-share.json.
 */
export function unionisedShare(ph: number, scale: PhScale, temperature: number, salinity: number): number {
  if (salinity <= 0) return shareOf(ph, ammoniaPkFresh(temperature));
  switch (scale) {
    case 'nbs':
      return shareOf(ph - nbsAboveTotal(temperature, salinity), ammoniaPkTotal(temperature, salinity));
    case 'total':
      return shareOf(ph, ammoniaPkTotal(temperature, salinity));
    case 'free':
      return shareOf(ph, ammoniaPkFree(temperature, salinity));
  }
}

/**
 * How that part changes with pH, from the part itself.
 *
 *   ln 10 · f · (1 − f)
 *
 * @param share 1 as `unionisedShare` gives it
 * @returns     1 per unit of pH
 *
 * Holds, leaves out, source: as `unionisedShare`, of which it is the exact derivative.
 * Checked    against central differences.
 */
export function unionisedShareByPh(share: number): number {
  return Math.LN10 * share * (1 - share);
}

function shareOf(ph: number, pk: number): number {
  return 1 / (1 + 10 ** (pk - held(ph, -UTMOST_PH, UTMOST_PH)));
}

const PH = { name: 'pH', unit: '', low: 6, high: 10 };
const TEMPERATURE = { name: 'temperature', unit: '°C', low: 0, high: 40 };
const SALINITY = { name: 'salinity', unit: '', low: 0, high: 40 };

type ShareLaw = Law<[ph: number, temperature: number, salinity: number]>;

function shareLaw(id: string, scale: PhScale): ShareLaw {
  const compute = (ph: number, temperature: number, salinity: number) =>
    unionisedShare(ph, scale, temperature, salinity);
  return law(id, '', compute, [PH, TEMPERATURE, SALINITY]);
}

export const unionisedShareNbsLaw: ShareLaw = shareLaw('unionised-share-nbs', 'nbs');
export const unionisedShareTotalLaw: ShareLaw = shareLaw('unionised-share-total', 'total');
export const unionisedShareFreeLaw: ShareLaw = shareLaw('unionised-share-free', 'free');
