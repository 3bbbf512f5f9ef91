import { type Law, law } from './law';

/** g/mol: chlorine, nitrogen, ozone, sodium thiosulphate with its water. */
const [CHLORINE, NITROGEN, OZONE, THIOSULPHATE] = [70.906, 14.0067, 47.9982, 248.18] as const;

/**
 * Sodium thiosulphate that takes the chlorine out of water.
 *
 *   2 Na2S2O3·5H2O + Cl2: 7.0 g for a gram of chlorine
 *
 * @param chlorine g as Cl2, free and bound together; 0 to 1e6
 * @returns        g of the crystals
 *
 * Holds      by the reaction of two to one; products on sale need 2 to 7 parts. Beyond the range: the same line, nothing below
 *            nothing.
 * Leaves out the ammonia that chloramine leaves behind: see `chloramineNitrogen`. Test the water before any animal meets it.
 * Source     reaction as at koifishponds.com/chlorine.htm; weights of the atoms.
 * Checked    tests/core/water/oxidants.test.ts.
 */
export function thiosulphateFor(chlorine: number): number {
  return (Math.max(0, chlorine) * 2 * THIOSULPHATE) / CHLORINE;
}

/**
 * Ammonia nitrogen that chloramine leaves when its chlorine is taken out.
 *
 *   one nitrogen for each chlorine: 0.198 g for a gram
 *
 * @param chlorine g bound as monochloramine, as Cl2; 0 to 1e6
 * @returns        g of nitrogen
 *
 * Holds      for monochloramine. Beyond the range: the same line, nothing below nothing.
 * Leaves out ammonia that was in the mains besides.
 * Source     weights of the atoms.
 * Checked    tests/core/water/oxidants.test.ts.
 */
export function chloramineNitrogen(chlorine: number): number {
  return (Math.max(0, chlorine) * NITROGEN) / CHLORINE;
}

/**
 * Ozone as the chlorine that would oxidise as much: what a test for total oxidant shows in sea water.
 *
 *   70.906 / 47.998: 1.48 g for a gram of ozone
 *
 * @param ozone g 0 to 1e6
 * @returns     g as Cl2
 *
 * Holds      while all of it has become bromine's oxidants. Beyond the range: the same line, nothing below nothing.
 * Leaves out how fast it decays, for which nothing general is published: reckon with all of it.
 * Source     weights of the atoms.
 * Checked    tests/core/water/oxidants.test.ts.
 */
export function ozoneAsChlorine(ozone: number): number {
  return (Math.max(0, ozone) * CHLORINE) / OZONE;
}

const MASS = { unit: 'g', low: 0, high: 1e6 };

export const thiosulphateForLaw: Law<[chlorine: number]> = law('thiosulphate-for', 'g', thiosulphateFor, [
  { name: 'chlorine', ...MASS },
]);
export const chloramineNitrogenLaw: Law<[chlorine: number]> = law('chloramine-nitrogen', 'g', chloramineNitrogen, [
  { name: 'chlorine', ...MASS },
]);
export const ozoneAsChlorineLaw: Law<[ozone: number]> = law('ozone-as-chlorine', 'g', ozoneAsChlorine, [
  { name: 'ozone', ...MASS },
]);
