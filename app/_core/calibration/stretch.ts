/**
 * What this room knows: how figures of a system are found from its recorded readings: which pieces of time tell something,
 * what the laws say they should look like, and how far the answer can be trusted.
 * What it leaves out: the search for the best figures itself, for which `_server/calibration` takes a package.
 * Where the numbers come from: good readings, the laws of `water`, and the description for everything that is held.
 */

/** One good reading, or the mean of those of some minutes. */
export interface Point {
  /** ms since 1970. */
  atMs: number;
  value: number;
}

/** A piece of recorded time. */
export interface Span {
  fromMs: number;
  toMs: number;
}

/** A piece of time that a fit is made from. */
export interface Stretch extends Span {
  /** Stays the same however often it is found: kind and beginning. */
  key: string;
  points: Point[];
}

/** Readings apart by more than this many usual steps have a gap between them. Common practice, no source. */
const GAP_STEPS = 3;
const LEAST_GAP_MS = 5 * 60_000;

/**
 * The points within a span, as runs without a gap.
 *
 * @param points   in order of time
 */
export function runsWithin(points: readonly Point[], { fromMs, toMs }: Span): Point[][] {
  const within = points.filter(({ atMs }) => atMs >= fromMs && atMs <= toMs);
  const gapMs = Math.max(LEAST_GAP_MS, GAP_STEPS * usualStepMs(points));
  const runs: Point[][] = [];
  for (const point of within) {
    const run = runs.at(-1);
    const last = run?.at(-1);
    if (run && last && point.atMs - last.atMs <= gapMs) run.push(point);
    else runs.push([point]);
  }
  return runs;
}

/** Time that usually lies between two readings, ms: the middle one of all; 0 with fewer than two. */
export function usualStepMs(points: readonly Point[]): number {
  const steps = points.slice(1).map(({ atMs }, at) => atMs - (points[at]?.atMs ?? atMs));
  return steps.sort((a, b) => a - b)[steps.length >> 1] ?? 0;
}

/** Least difference between two readings that are not the same: the step of the display; 0 where all are the same. */
export function leastStep(points: readonly Point[]): number {
  const values = [...new Set(points.map(({ value }) => value))].sort((a, b) => a - b);
  const steps = values.slice(1).map((value, at) => value - (values[at] ?? value));
  // Means of some minutes differ by crumbs, which are no step of a display.
  const whole = steps.filter((step) => step > 1e-6);
  return whole.length === 0 ? 0 : Math.min(...whole);
}

/** Spans in both of two lists, each in order of time and apart. */
export function both(one: readonly Span[], other: readonly Span[]): Span[] {
  return one.flatMap((a) =>
    other.flatMap((b) => {
      const fromMs = Math.max(a.fromMs, b.fromMs);
      const toMs = Math.min(a.toMs, b.toMs);
      return fromMs < toMs ? [{ fromMs, toMs }] : [];
    }),
  );
}
