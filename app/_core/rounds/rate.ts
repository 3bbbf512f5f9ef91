import { beyondUsual } from './abnormal';
import type { Check, Range } from './check';
import type { EntryValue } from './entry';

const DAY_MS = 86_400_000;
/** How many times as much, or as little, as the middle one of the rates before is asked about where nobody said what is usual. Common practice, no source. */
export const UNUSUAL_FACTOR = 2;
/** A rate goes over this long at least, so that day and night, and a reservoir read by its marks, even out. Common practice, no source. */
const STRETCH_MS = 20 * 3_600_000;
/** Rates before from which what is usual is told, at least. Common practice, no source. */
const LEAST_RATES = 3;
/** Part by which the latest of three rates that go one way has to differ from the first to be told as a trend. Common practice, no source. */
const TREND_SHARE = 0.2;
/** Entries of a line that are looked back at for its rates. */
export const RATES_BACK = 24;

/** What was noted on a line, and when. */
export interface NotedValue {
  value: EntryValue;
  atMs: number;
}

/** What was used a day up to some time: litres, or doses. */
interface Rate {
  perDay: number;
  atMs: number;
}

/** What is used a day on a line: of late, and what is usual. */
export interface UsedRate extends Rate {
  /** As somebody said, else within a factor of two of the middle of the rates before; left out where nothing tells. */
  usual?: Range;
  /** Rates before, the latest first. */
  before: Rate[];
  trend: 'rising' | 'falling' | null;
}

/**
 * What is used a day on a line.
 *
 * @param noted   what was noted on it, the latest first
 * @returns       null where no two entries tell of a rate
 */
export function usedRate(check: Check, noted: readonly NotedValue[]): UsedRate | null {
  if (check.kind !== 'used' && check.kind !== 'doses') return null;
  const [latest, ...before] = ratesOf(noted);
  if (!latest) return null;
  const usual = check.perDay ?? usualOf(before);
  return { ...latest, ...(usual && { usual }), before, trend: trendOfRates([latest, ...before]) };
}

/** What was used a day over stretches of about a day at least, the latest first. @param noted the latest first */
function ratesOf(noted: readonly NotedValue[]): Rate[] {
  const rates: Rate[] = [];
  let [endMs, amount] = [noted[0]?.atMs ?? 0, 0];
  for (const [index, { value }] of noted.entries()) {
    amount += value.kind === 'used' ? value.litres : value.kind === 'doses' ? value.doses : 0;
    const sinceMs = noted[index + 1]?.atMs;
    if (sinceMs === undefined || endMs - sinceMs < STRETCH_MS) continue;
    rates.push({ perDay: (amount * DAY_MS) / (endMs - sinceMs), atMs: endMs });
    [endMs, amount] = [sinceMs, 0];
  }
  return rates;
}

/** On which side of what is usual a rate lies; null where it does not. */
export function beyondRate(rate: UsedRate | null): 'above' | 'below' | null {
  return rate && beyondUsual(rate.usual, rate.perDay);
}

function usualOf(before: readonly Rate[]): Range | undefined {
  if (before.length < LEAST_RATES) return undefined;
  const ordered = before.map(({ perDay }) => perDay).sort((a, b) => a - b);
  const middle = ordered[Math.floor(ordered.length / 2)] ?? 0;
  return middle > 0 ? { from: middle / UNUSUAL_FACTOR, to: middle * UNUSUAL_FACTOR } : undefined;
}

function trendOfRates([last, middle, first]: readonly Rate[]): UsedRate['trend'] {
  if (!last || !middle || !first) return null;
  const least = TREND_SHARE * first.perDay;
  if (last.perDay > middle.perDay && middle.perDay > first.perDay && last.perDay - first.perDay > least)
    return 'rising';
  const falls = last.perDay < middle.perDay && middle.perDay < first.perDay;
  return falls && first.perDay - last.perDay > least ? 'falling' : null;
}
