import { groupBy } from '../group-by';

/**
 * Spans of time that readings are looked at over, days; of what they are drawn, so that a year opens as fast as a day; and how
 * their table is cut, hours.
 */
export const SPANS = {
  day: { days: 1, of: 'readings', rowHours: 1 },
  week: { days: 7, of: 'hours', rowHours: 6 },
  month: { days: 31, of: 'hours', rowHours: 24 },
  'sixty-days': { days: 60, of: 'hours', rowHours: 24 },
  year: { days: 365, of: 'days', rowHours: 168 },
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
  /** How many came late. */
  late: number;
  /** Of how many it was not counted whether they did. */
  notCounted: number;
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

/**
 * Buckets of many as fewer, each of those that begin within the same stretch.
 *
 * @param fromMs     where the first stretch begins, ms since 1970
 * @param lengthMs   length of a stretch
 */
export function gathered(buckets: readonly Bucket[], fromMs: number, lengthMs: number): Bucket[] {
  const groups = groupBy(buckets, (one) => Math.floor((one.fromMs - fromMs) / lengthMs));
  return [...groups.values()].map((group) => {
    const count = group.reduce((sum, one) => sum + one.count, 0);
    return {
      fromMs: Math.min(...group.map((one) => one.fromMs)),
      toMs: Math.max(...group.map((one) => one.toMs)),
      low: Math.min(...group.map(({ low }) => low)),
      high: Math.max(...group.map(({ high }) => high)),
      mean: group.reduce((sum, one) => sum + one.mean * one.count, 0) / count,
      count,
      late: group.reduce((sum, { late }) => sum + late, 0),
      notCounted: group.reduce((sum, { notCounted }) => sum + notCounted, 0),
    };
  });
}
