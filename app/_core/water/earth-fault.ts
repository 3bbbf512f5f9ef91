import { type Law, law } from './law';

/** mA from which a Class A device must trip. */
const CLASS_A = 6;
/** s: no slower than this has to be promised, however great the current. */
const FASTEST = 0.025;

/**
 * Longest time that a North American earth-fault device of Class A may take to trip.
 *
 *   t = (20/I)^1.43
 *
 * @param current mA to earth; 0 to 10 000
 * @returns       s  Infinity below 6 mA, where it need not trip; 0.025 from 264 mA on
 *
 * Holds      for a device that works: press its test button as the maker says. Beyond the range: the formula.
 * Leaves out current from line to neutral, which it does not see at all, and a body already between the two.
 * Source     UL 943 as quoted at forums.mikeholt.com (42382); 6 mA at profengineering.com/glossary/gfci.
 * Checked    tests/core/water/oxidants.test.ts; tests/reference/gfci-time.json.
 */
export function gfciTime(current: number): number {
  if (current < CLASS_A) return Number.POSITIVE_INFINITY;
  return Math.max(FASTEST, (20 / current) ** 1.43);
}

/**
 * Longest time that a residual current device of the IEC kind, without delay, may take to trip.
 *
 *   0.3 s from its rated current, 0.15 s from twice, 0.04 s from five times
 *
 * @param current mA to earth; 0 to 10 000
 * @param rated   mA on its face, mostly 30; 1 to 1000
 * @returns       s  Infinity below the rated current: from half of it on it may trip, and cannot be counted on
 *
 * Holds      for a device that works. Beyond the range: the steps; a rated current below 1 counts as 1.
 * Leaves out what `gfciTime` leaves out, delayed kinds, and direct current, to which some kinds are blind.
 * Source     IEC 61008 (times from memory; half the rated current at academy.lovatoelectric.com).
 * Checked    tests/core/water/oxidants.test.ts.
 */
export function rcdTime(current: number, rated: number): number {
  const times = current / Math.max(1, rated);
  if (Number.isNaN(times)) return times;
  if (times < 1) return Number.POSITIVE_INFINITY;
  if (times < 2) return 0.3;
  return times < 5 ? 0.15 : 0.04;
}

const CURRENT = { name: 'current', unit: 'mA', low: 0, high: 10_000 };

export const gfciTimeLaw: Law<[current: number]> = law('gfci-time', 's', gfciTime, [CURRENT]);
export const rcdTimeLaw: Law<[current: number, rated: number]> = law('rcd-time', 's', rcdTime, [
  CURRENT,
  { name: 'rated', unit: 'mA', low: 1, high: 1000 },
]);
