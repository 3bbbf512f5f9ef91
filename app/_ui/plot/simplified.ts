/** A point of a drawing, px. */
export type Point = [number, number];

/**
 * A line with only the points that its shape needs (Ramer, Douglas and Peucker): what is left out lies nearer to what stays
 * than anybody can see.
 *
 * @param points    in order along x
 * @param within    greatest distance of a point that is left out, px, above 0
 */
export function simplified(points: readonly Point[], within = 0.2): Point[] {
  const last = points.length - 1;
  if (last < 2) return [...points];
  const kept = new Set([0, last]);
  const open: [number, number][] = [[0, last]];
  for (let stretch = open.pop(); stretch; stretch = open.pop()) {
    const [from, to] = stretch;
    const far = farthest(points, from, to);
    if (far.distance <= within) continue;
    kept.add(far.at);
    open.push([from, far.at], [far.at, to]);
  }
  return points.filter((_, i) => kept.has(i));
}

/** The point between two others that lies farthest from the line through them. */
function farthest(points: readonly Point[], from: number, to: number): { at: number; distance: number } {
  const [ax, ay] = points[from] ?? [0, 0];
  const [bx, by] = points[to] ?? [0, 0];
  const length = Math.hypot(bx - ax, by - ay) || 1;
  let far = { at: from, distance: 0 };
  for (let i = from + 1; i < to; i++) {
    const [x, y] = points[i] ?? [0, 0];
    const distance = Math.abs((bx - ax) * (ay - y) - (ax - x) * (by - ay)) / length;
    if (distance > far.distance) far = { at: i, distance };
  }
  return far;
}

/** Whether a point and two on either side lie on one straight line: then it can go without bending what is drawn through them. */
export function isMidway(values: readonly (number | null)[], i: number, within = 1e-6): boolean {
  const [a, b, c, d, e] = [i - 2, i - 1, i, i + 1, i + 2].map((at) => values[at] ?? null);
  if (a == null || b == null || c == null || d == null || e == null) return false;
  const step = b - a;
  return [c - b, d - c, e - d].every((one) => Math.abs(one - step) <= within);
}
