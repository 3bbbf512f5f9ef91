import type { PhScale } from '../facility/system';
import { held, KELVIN, type Law, law } from './law';
import { FLUORIDE, fluoridePk, SULPHATE, sulphatePk } from './seawater-acids';

/** Practical salinity below which no conversion was published; the step falls from there to nothing in fresh water. */
const LEAST = 20;
const SALTIEST = 50;

/** How much of the hydrogen ions sulphate holds, against those that are free. */
function bySulphate(t: number, s: number): number {
  return SULPHATE * s * 10 ** sulphatePk(t, s);
}

/**
 * How far pH on the free scale stands above that on the total scale.
 *
 *   log10(1 + [sulphate]/Ks)
 *
 * @param temperature °C     0 to 45
 * @param salinity    PSS-78 0 to 45
 * @returns           1      0 in fresh water, 0.108 at 25 °C and salinity 35
 *
 * Holds      for salts in the proportions of the sea. Beyond the range: the formula, with temperature held between −5 and
 *            60 °C and salinity between 0 and 50.
 * Leaves out fluoride, which belongs to the seawater scale.
 * Source     definition of the scales: Dickson 1990, as in PyCO2SYS (github.com/mvdh7/PyCO2SYS), convert.py.
 * Checked    tests/core/water/ph-scales.test.ts.
 */
export function freeAboveTotal(temperature: number, salinity: number): number {
  return Math.log10(1 + bySulphate(temperature, held(salinity, 0, SALTIEST)));
}

/**
 * How far a meter calibrated in the usual buffers of 4, 7 and 10 (NBS) reads above the total scale.
 *
 *   −log10(fH·sws/total)      fH = 1.2948 − 0.002036·T + (0.0004607 − 1.475e-6·T)·S²
 *
 * @param temperature °C     0 to 40
 * @param salinity    PSS-78 0 to 40
 * @returns           1      0 in fresh water, 0.137 at 25 °C and salinity 35
 *
 * Holds      from salinity 20; below that nothing was found published, and the step falls in proportion to nothing in fresh
 *            water, which takes less off a reading than is there and so errs towards more un-ionised ammonia. Beyond the
 *            range: the formula, with temperature held between −5 and 60 °C and salinity between 0 and 50.
 * Leaves out the electrode itself: a further 0.02 to 0.05 either way in salt water (from memory).
 * Source     Takahashi and others 1982, GEOSECS Pacific Expedition 3, 80, as in PyCO2SYS (github.com/mvdh7/PyCO2SYS),
 *            fH_TWB82, and R package seacarb; that it holds from 20 is from memory.
 * Checked    tests/core/water/ph-scales.test.ts; tests/reference/nbs-above-total.json.
 */
export function nbsAboveTotal(temperature: number, salinity: number): number {
  const t = held(temperature, -5, 60);
  const below = held(salinity, 0, LEAST) / LEAST;
  const s = held(salinity, LEAST, SALTIEST);
  const sulphate = bySulphate(t, s);
  const toSeawater = 1 + (FLUORIDE * s * 10 ** fluoridePk(t, s)) / (1 + sulphate);
  return -below * Math.log10(hydrogenActivity(t, s) * toSeawater);
}

/**
 * Activity of hydrogen ions as buffers have it, for one mol/kg on the seawater scale.
 *
 * @param temperature °C     0 to 40
 * @param salinity    PSS-78 20 to 40
 * @returns           kg/mol 0.7134043 at 25 °C and salinity 35
 *
 * Holds, leaves out, source, checked: as `nbsAboveTotal`, of which it is a part.
 */
export function hydrogenActivity(temperature: number, salinity: number): number {
  const T = temperature + KELVIN;
  return 1.2948 - 0.002036 * T + (0.0004607 - 1.475e-6 * T) * salinity * salinity;
}

/**
 * A pH on the total scale, from one on a named scale.
 *
 * @param ph          1      as read
 * @param scale              the scale that the probe or the test is on
 * @param temperature °C     as `nbsAboveTotal`
 * @param salinity    PSS-78 as `nbsAboveTotal`; in fresh water all scales are one
 * @returns           1      on the total scale; its slope by `ph` is 1
 *
 * Holds, leaves out, source, checked: as `nbsAboveTotal` and `freeAboveTotal`.
 */
export function toTotalScale(ph: number, scale: PhScale, temperature: number, salinity: number): number {
  return ph - aboveTotal(scale, temperature, salinity);
}

/**
 * A pH as a probe on a named scale reads it, from one on the total scale: the inverse of `toTotalScale`.
 *
 * @param total       1      pH on the total scale
 * @param scale              the scale wanted
 * @param temperature °C     as above
 * @param salinity    PSS-78 as above
 * @returns           1
 *
 * Holds, leaves out, source, checked: as `toTotalScale`.
 */
export function fromTotalScale(total: number, scale: PhScale, temperature: number, salinity: number): number {
  return total + aboveTotal(scale, temperature, salinity);
}

function aboveTotal(scale: PhScale, temperature: number, salinity: number): number {
  switch (scale) {
    case 'nbs':
      return nbsAboveTotal(temperature, salinity);
    case 'free':
      return freeAboveTotal(temperature, salinity);
    case 'total':
      // So that a broken figure is not lost on the way.
      return 0 * (temperature + salinity);
  }
}

export const freeAboveTotalLaw: Law<[temperature: number, salinity: number]> = law(
  'ph-free-above-total',
  '',
  freeAboveTotal,
  [
    { name: 'temperature', unit: '°C', low: 0, high: 45 },
    { name: 'salinity', unit: '', low: 0, high: 45 },
  ],
);

export const nbsAboveTotalLaw: Law<[temperature: number, salinity: number]> = law(
  'ph-nbs-above-total',
  '',
  nbsAboveTotal,
  [
    { name: 'temperature', unit: '°C', low: 0, high: 40 },
    { name: 'salinity', unit: '', low: 0, high: 40 },
  ],
);
