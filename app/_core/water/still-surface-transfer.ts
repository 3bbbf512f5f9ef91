import { held, type Law, law } from './law';

/** Schmidt number of oxygen in fresh water, 4 to 35 °C. */
const [S0, S1, S2, S3] = [1568, -86.04, 2.142, -0.0216] as const;

/** m/s: k600 = 2.07 cm/h with no wind at all. */
const WINDLESS_K600 = 0.0207 / 3600;

/**
 * How fast oxygen passes through a surface that nothing stirs.
 *
 *   k = 2.07 cm/h · (Sc/600)^−0.5          Sc = 1568 − 86.04·t + 2.142·t² − 0.0216·t³
 *
 * @param temperature °C  4 to 35
 * @returns           m/s times the surface in m²: cubic metres of water brought to saturation per second
 *
 * Holds      for lakes without wind, so it flatters a tank, whose water below the surface does not move either. Beyond
 *            the range: temperature held between 0 and 40 °C.
 * Leaves out salt (at 20 °C the Schmidt number in sea water is the same within 1 %), oil films and lids.
 * Source     Cole & Caraco 1998 for k600 at no wind, and the Schmidt number, both as in LakeMetabolizer
 *            (github.com/GLEON/LakeMetabolizer).
 * Checked    tests/core/water/still-surface-transfer.test.ts; tests/reference/still-surface-transfer.json.
 */
export function stillSurfaceTransfer(temperature: number): number {
  const t = held(temperature, 0, 40);
  return WINDLESS_K600 * Math.sqrt(600 / (S0 + t * (S1 + t * (S2 + t * S3))));
}

export const stillSurfaceTransferLaw: Law<[temperature: number]> = law(
  'still-surface-transfer',
  'm/s',
  stillSurfaceTransfer,
  [{ name: 'temperature', unit: '°C', low: 4, high: 35 }],
);
