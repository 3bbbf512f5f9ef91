/** How oxygen moves in one body of water. */
export interface Breath {
  /** 1/h kLa at the water's temperature. */
  transferPerH: number;
  /** mg/L in an hour that everything in it uses. */
  usePerH: number;
  /** mg/L at the beginning. */
  start: number;
}

/**
 * Oxygen of a mixed body of water some time after something changed.
 *
 *   dC/dt = kLa·(C* − C) − r      C(t) = C∞ + (C0 − C∞)·e^(−kLa·t),  C∞ = C* − r/kLa
 *
 * @param saturation mg/L C* at its temperature and salinity
 * @param elapsedH   h    0 or more
 * @returns          mg/L; without transfer the line C0 − r·t, exactly
 *
 * Holds      while temperature, transfer and use stay as they are; a late probe shows the same exponent once it has caught up.
 * Leaves out that animals use less where there is little, and light.
 * Source     SWAT+ documentation, reaeration 7:3.5 (swatplus.gitbook.io): dC/dt = KLa (C* − C) − r.
 * Checked    tests/core/calibration/oxygen-curve.test.ts
 */
export function oxygenAfter({ transferPerH, usePerH, start }: Breath, saturation: number, elapsedH: number): number {
  const x = transferPerH * elapsedH;
  const left = Math.exp(-x);
  const meanFade = x === 0 ? 1 : -Math.expm1(-x) / x;
  return start * left + (transferPerH * saturation - usePerH) * elapsedH * meanFade;
}
