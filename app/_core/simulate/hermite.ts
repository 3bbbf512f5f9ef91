import type { Knot } from './world';

/**
 * Value of one number of the state between two knots, by the cubic through both values and rates.
 * @param t s, between the knots
 */
export function between(a: Knot, b: Knot, index: number, t: number): number {
  const h = b.t - a.t;
  if (h <= 0) return b.x[index] as number;
  const z = (t - a.t) / h;
  const y = 1 - z;
  return (
    (1 + 2 * z) * y * y * (a.x[index] as number) +
    z * y * y * h * (a.f[index] as number) +
    z * z * (3 - 2 * z) * (b.x[index] as number) -
    z * z * y * h * (b.f[index] as number)
  );
}

/** Index of the last knot at or before t whose successor lies after it (knots come in pairs at events). */
export function knotBefore(knots: Knot[], t: number): number {
  let low = 0;
  let high = knots.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((knots[middle] as Knot).t <= t) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** The whole state at time t of a recorded run; outside it, the nearest end. */
export function stateAt(knots: Knot[], t: number): Float64Array {
  const at = knotBefore(knots, t);
  const a = knots[at] as Knot;
  const b = knots[at + 1];
  if (!b || t <= a.t) return Float64Array.from(a.x);
  return Float64Array.from(a.x, (_, i) => between(a, b, i, t));
}
