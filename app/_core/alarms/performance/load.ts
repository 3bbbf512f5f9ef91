import { DAY_MS, HOUR_MS, type Period, TEN_MIN_MS } from './raise';
import { REFERENCES } from './references';

/** How many come, and how they come. */
export interface Load {
  count: number;
  perHour: number;
  perTenMin: number;
  /** Most in ten minutes by the clock. */
  mostInTenMin: number;
  /** Share of the stretches of ten minutes with more than ten, 0 to 1. */
  shareOver: number;
  floods: Flood[];
  /** Share of the time spent in floods, 0 to 1. */
  shareInFlood: number;
}

/** A stretch with more than anybody can look at. */
export interface Flood extends Period {
  count: number;
}

/**
 * How many alarms there were in a period, and how they came. Stretches of ten minutes begin with the hour of UTC.
 *
 * @param atMs   when each came, ms since 1970; what lies outside the period is left out
 */
export function loadOf(atMs: readonly number[], { fromMs, toMs }: Period): Load {
  const first = Math.floor(fromMs / TEN_MIN_MS);
  const counts = new Array<number>(Math.max(1, Math.ceil(toMs / TEN_MIN_MS) - first)).fill(0);
  let count = 0;
  for (const at of atMs) {
    if (at < fromMs || at >= toMs) continue;
    const bin = Math.floor(at / TEN_MIN_MS) - first;
    counts[bin] = (counts[bin] ?? 0) + 1;
    count += 1;
  }
  const floods = floodsIn(counts).map(({ from, to, count: many }) => ({
    fromMs: (first + from) * TEN_MIN_MS,
    toMs: (first + to) * TEN_MIN_MS,
    count: many,
  }));
  const inFlood = floods.reduce((sum, flood) => sum + flood.toMs - flood.fromMs, 0);
  return {
    count,
    perHour: count / ((toMs - fromMs) / HOUR_MS),
    perTenMin: count / ((toMs - fromMs) / TEN_MIN_MS),
    mostInTenMin: counts.reduce((most, one) => Math.max(most, one), 0),
    shareOver: counts.filter((one) => one > REFERENCES.mostInTenMin).length / counts.length,
    floods,
    shareInFlood: inFlood / (counts.length * TEN_MIN_MS),
  };
}

/**
 * Floods among counts of ten minutes each: one begins with more than ten and lasts until fewer than five came.
 *
 * @returns   by places in the list, `to` not counted
 */
export function floodsIn(counts: readonly number[]): { from: number; to: number; count: number }[] {
  const floods: { from: number; to: number; count: number }[] = [];
  let open: { from: number; to: number; count: number } | null = null;
  for (const [at, count] of counts.entries()) {
    if (open && count < REFERENCES.flood.under) open = null;
    else if (open) {
      open.to = at + 1;
      open.count += count;
    } else if (count > REFERENCES.flood.over) {
      open = { from: at, to: at + 1, count };
      floods.push(open);
    }
  }
  return floods;
}

/** How many days a period has, at least one: for figures by day and week. */
export function daysOf({ fromMs, toMs }: Period): number {
  return Math.max(1, (toMs - fromMs) / DAY_MS);
}
