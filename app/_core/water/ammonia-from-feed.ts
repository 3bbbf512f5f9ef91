import { held, type Law, law } from './law';

/** Nitrogen in protein. */
const NITROGEN = 0.16;
/** Part of it that becomes ammonia in the water. */
const EXCRETED = 0.64;

/**
 * Ammonia nitrogen that feed becomes in the water, when nothing takes it up.
 *
 *   N = feed · protein · 0.16 · 0.64
 *
 * @param feed    g given; 0 to 1e6
 * @param protein 1 of the feed as it is given: 0.3 to 0.5 dry, 0.1 to 0.2 frozen; 0 to 1
 * @returns       g of total ammonia nitrogen: 46 for a kilogram of 45 %
 *
 * Holds      for feed that is eaten, within a day or so. Beyond the range: the formula, protein held between 0 and 1, and no feed
 *            below nothing. The older figure of 0.092 for 0.16 · 0.64 (from memory) gives a tenth less.
 * Leaves out feed that lies and rots, which gives nearly all its nitrogen, and what animals build of it.
 * Source     feed × protein × 16 % × 64 % (earthanedge.com, total ammonia nitrogen).
 * Checked    tests/core/water/feed-and-alkalinity.test.ts.
 */
export function ammoniaFromFeed(feed: number, protein: number): number {
  return Math.max(0, feed) * held(protein, 0, 1) * NITROGEN * EXCRETED;
}

/** g/mol. */
const N = 14.0067;

/**
 * Oxygen that nitrifying a mass of ammonia nitrogen takes.
 *
 *   NH4⁺ + 2 O2 → NO3⁻ + 2 H⁺ + H2O: 4.57 g of oxygen for a gram of nitrogen
 *
 * @param nitrogen g 0 to 1e6
 * @returns        g of oxygen
 *
 * Holds      by weight of the atoms. Beyond the range: the same line, nothing below nothing.
 * Leaves out what the bacteria grow by: 4.18 with it (from memory).
 * Source     stoichiometry; 4.57 also at chvagk.com.
 * Checked    tests/core/water/feed-and-alkalinity.test.ts.
 */
export function nitrificationOxygen(nitrogen: number): number {
  return (Math.max(0, nitrogen) * 2 * 31.9988) / N;
}

/**
 * Alkalinity that nitrifying a mass of ammonia nitrogen uses up.
 *
 *   two charges for each nitrogen: 7.15 g as calcium carbonate for a gram
 *
 * @param nitrogen g   0 to 1e6
 * @returns        mol of charge
 *
 * Holds, leaves out: as `nitrificationOxygen`; 7.05 g with growth (from memory).
 * Source     stoichiometry; 7.14 as quoted from the US agency's manual of 1975 in public code.
 * Checked    tests/core/water/feed-and-alkalinity.test.ts.
 */
export function nitrificationAlkalinity(nitrogen: number): number {
  return (2 * Math.max(0, nitrogen)) / N;
}

const NITROGEN_ARGUMENT = { name: 'nitrogen', unit: 'g', low: 0, high: 1e6 };

export const ammoniaFromFeedLaw: Law<[feed: number, protein: number]> = law('ammonia-from-feed', 'g', ammoniaFromFeed, [
  { name: 'feed', unit: 'g', low: 0, high: 1e6 },
  { name: 'protein', unit: '', low: 0, high: 1 },
]);
export const nitrificationOxygenLaw: Law<[nitrogen: number]> = law('nitrification-oxygen', 'g', nitrificationOxygen, [
  NITROGEN_ARGUMENT,
]);
export const nitrificationAlkalinityLaw: Law<[nitrogen: number]> = law(
  'nitrification-alkalinity',
  'mol',
  nitrificationAlkalinity,
  [NITROGEN_ARGUMENT],
);
