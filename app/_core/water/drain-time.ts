import { GRAVITY } from './drain-rate';
import { type Law, law } from './law';

/**
 * How long a tank takes to drain from one head of water to a lower one (Torricelli, integrated).
 *
 *   t = A/(Cd·a) · √(2/g) · (√h1 − √h2)
 *
 * @param area        m²  of the tank's surface; 0.0001 to 100 000
 * @param coefficient     Cd, as in `drainRate`; 0.05 to 1
 * @param opening     m²  as in `drainRate`; 1e-8 to 10
 * @param from        m   head at the start; 0 to 100
 * @param to          m   head at the end, not above `from`; 0 to 100
 * @returns           s   0 when the end is not below the start; Infinity when nothing can run out
 *
 * Holds      for upright walls and no inflow. Beyond the range: the formula; less than nothing counts as nothing.
 * Leaves out friction of long hoses, except through the coefficient.
 * Source     Torricelli; curioustab.com, time to empty a tank with an orifice at the bottom. A page that prints
 *            A·√h/(a·√(2g)) gives half the time.
 * Checked    tests/core/water/drain.test.ts; tests/reference/drain-time.json; the reference ODE library.
 */
export function drainTime(area: number, coefficient: number, opening: number, from: number, to: number): number {
  const fall = Math.sqrt(Math.max(0, from)) - Math.sqrt(Math.max(0, to));
  const size = Math.max(0, area);
  const hole = Math.max(0, coefficient) * Math.max(0, opening);
  if (fall <= 0 || size === 0) return Number.isNaN(hole + size) ? Number.NaN : 0;
  return (size / hole) * Math.sqrt(2 / GRAVITY) * fall;
}

export const drainTimeLaw: Law<[area: number, coefficient: number, opening: number, from: number, to: number]> = law(
  'drain-time',
  's',
  drainTime,
  [
    { name: 'area', unit: 'm²', low: 1e-4, high: 1e5 },
    { name: 'coefficient', unit: '', low: 0.05, high: 1 },
    { name: 'opening', unit: 'm²', low: 1e-8, high: 10 },
    { name: 'from', unit: 'm', low: 0, high: 100 },
    { name: 'to', unit: 'm', low: 0, high: 100 },
  ],
  (_area, _coefficient, _opening, from, to) =>
    to <= from ? null : `to is ${to}, above the head of ${from} m it starts from`,
);
