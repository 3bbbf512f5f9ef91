import type { EntryValue } from './entry';

const DAY_MS = 86_400_000;
/** Two entries closer than this say nothing of a rate: a few litres in a few minutes are a large rate of nothing. Common practice, no source. */
const LEAST_MS = 3_600_000;

/**
 * What was used a day, from what was used since somebody last looked.
 * @param sinceMs   when somebody last noted it; null when nobody has
 * @returns         litres or doses a day; null where there is no time between to divide by
 */
export function usedPerDay(value: EntryValue, sinceMs: number | null, atMs: number): number | null {
  if (sinceMs === null || atMs - sinceMs < LEAST_MS) return null;
  if (value.kind === 'used') return (value.litres * DAY_MS) / (atMs - sinceMs);
  return value.kind === 'doses' ? (value.doses * DAY_MS) / (atMs - sinceMs) : null;
}
