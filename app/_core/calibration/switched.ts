import type { Point, Span } from './stretch';

/** W up to which a piece of equipment counts as off: what its controller draws meanwhile. Common practice, no source. */
const IDLE_W = 2;
/** Longest time that one reading of watts stands for, ms: who sends only changes still sends once an hour. */
const STANDS_MS = 75 * 60_000;

/** Lowest and highest power read in some minutes. */
export interface Watts extends Span {
  low: number;
  high: number;
}

/**
 * When a piece of equipment was surely on, or surely off: from the first reading that says so to the last before another.
 * Between two readings that differ nothing is known.
 *
 * @param watts   in order of time
 */
export function spansOf(watts: readonly Watts[], is: 'on' | 'off'): Span[] {
  const spans: Span[] = [];
  let open: Span | null = null;
  for (const one of watts) {
    const says = one.high <= IDLE_W ? 'off' : one.low > IDLE_W ? 'on' : 'both';
    if (says !== is || (open && one.fromMs - open.toMs > STANDS_MS)) open = null;
    if (says !== is) continue;
    if (open) open.toMs = one.toMs;
    else {
      open = { fromMs: one.fromMs, toMs: one.toMs };
      spans.push(open);
    }
  }
  return spans.filter(({ fromMs, toMs }) => toMs > fromMs);
}

/** Moments after which a piece of equipment that had been on is off, each with when it was surely on again. */
export function stopsOf(watts: readonly Watts[]): Span[] {
  const on = spansOf(watts, 'on');
  return spansOf(watts, 'off').filter(({ fromMs }) =>
    on.some(({ toMs }) => toMs < fromMs && fromMs - toMs <= STANDS_MS / 5),
  );
}

/** Mean power over a span, W; null where nothing was read in it. */
export function meanWatts(watts: readonly Watts[], { fromMs, toMs }: Span): number | null {
  const within = watts.filter((one) => one.toMs >= fromMs && one.fromMs <= toMs);
  if (within.length === 0) return null;
  return within.reduce((sum, { low, high }) => sum + (low + high) / 2, 0) / within.length;
}

/** Whether a piece of equipment changed between on and off within a span. */
export function hasSwitched(watts: readonly Watts[], { fromMs, toMs }: Span): boolean {
  const says = new Set(
    watts
      .filter((one) => one.toMs >= fromMs && one.fromMs <= toMs)
      .flatMap(({ low, high }) => [low > IDLE_W, high > IDLE_W]),
  );
  return says.size > 1;
}

/** The points of watts as they come, one by one. */
export function wattsFrom(points: readonly Point[]): Watts[] {
  return points.map(({ atMs, value }) => ({ fromMs: atMs, toMs: atMs, low: value, high: value }));
}
