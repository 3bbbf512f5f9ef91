/** Spans of time that readings are looked at over, days, and how their table is cut, hours. */
export const SPANS = {
  day: { days: 1, rowHours: 1 },
  week: { days: 7, rowHours: 6 },
  month: { days: 31, rowHours: 24 },
  'sixty-days': { days: 60, rowHours: 24 },
} as const;

export type Span = keyof typeof SPANS;

/** Names of the spans, shortest first. */
export const SPAN_NAMES = Object.keys(SPANS) as Span[];

/** What many readings of some minutes were: of the good ones, by device or file. */
export interface Bucket {
  /** ms since 1970, of its first and its last reading. */
  fromMs: number;
  toMs: number;
  low: number;
  high: number;
  mean: number;
  count: number;
}

/**
 * Cuts what was read into stretches without a gap: nothing is drawn over hours in which nothing came.
 *
 * @param buckets   in order of time
 * @param gapMs     time without a reading that is a gap
 */
export function stretches(buckets: readonly Bucket[], gapMs: number): Bucket[][] {
  const found: Bucket[][] = [];
  let last: Bucket | undefined;
  for (const bucket of buckets) {
    if (last === undefined || bucket.fromMs - last.toMs > gapMs) found.push([]);
    found.at(-1)?.push(bucket);
    last = bucket;
  }
  return found;
}
