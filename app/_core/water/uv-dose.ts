import { held, type Law, law } from './law';

/**
 * Dose that water gets in an ultraviolet unit.
 *
 *   D = I · (1 − e^(−a·d))/(a·d) · V/Q      a = 2.303 · absorbance
 *
 * @param intensity  mW/cm² at the lamp's sleeve; 0 to 1000
 * @param absorbance 1/cm   at 254 nm, by a photometer; 0.01 clear to 0.3 yellow; 0 to 2
 * @param path       cm     of water between sleeve and wall; 0.1 to 50
 * @param chamber    m³     water in the unit; 1e-5 to 10
 * @param flow       m³/s   1e-7 to 10
 * @returns          mJ/cm² the same number as a thousand µW·s/cm²
 *
 * Holds      for water that takes as long as it should. Beyond the range: the formula; less than nothing as nothing, Infinity
 *            without flow.
 * Leaves out short cuts, a fouled sleeve, and the age of the lamp: each can take half. Germs that are not in the water are not
 *            reached.
 * Source     Beer's law and the time in the chamber (from memory).
 * Checked    tests/core/water/oxidants.test.ts.
 */
export function uvDose(intensity: number, absorbance: number, path: number, chamber: number, flow: number): number {
  const depth = Math.LN10 * Math.max(0, absorbance) * Math.max(0, path);
  const mean = held(intensity, 0, 1e15) * (depth < 1e-8 ? 1 - depth / 2 : (1 - Math.exp(-depth)) / depth);
  const seen = mean * Math.max(0, chamber);
  if (seen === 0) return Number.isNaN(flow) ? flow : 0;
  return seen / Math.max(0, flow);
}

export const uvDoseLaw: Law<[intensity: number, absorbance: number, path: number, chamber: number, flow: number]> = law(
  'uv-dose',
  'mJ/cm²',
  uvDose,
  [
    { name: 'intensity', unit: 'mW/cm²', low: 0, high: 1000 },
    { name: 'absorbance', unit: '1/cm', low: 0, high: 2 },
    { name: 'path', unit: 'cm', low: 0.1, high: 50 },
    { name: 'chamber', unit: 'm³', low: 1e-5, high: 10 },
    { name: 'flow', unit: 'm³/s', low: 1e-7, high: 10 },
  ],
);
