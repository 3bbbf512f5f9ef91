import 'server-only';
import type { Bucket } from '#core/readings/spans';
import { drawnReadings } from '#data/readings/chart';
import { dueWithin } from '#data/readings/due';
import { type RollUp, rolledUp, workedOut } from '#data/readings/roll-up';

const HOUR_MS = 3_600_000;
/** Buckets across a chart of readings. */
const BUCKETS = 480;
/** How many times the usual step is a gap, and the least that is one, ms. Common practice, no source. */
const GAP_STEPS = 3;
const LEAST_GAP_MS = 60_000;

/** What is drawn of a span. */
export interface DrawnBuckets {
  buckets: Bucket[];
  /** Time without a reading that is a gap, ms. */
  gapMs: number;
  /** s outside the limits of alarms, of those for which something is known; null where that was not reckoned. */
  outside: { outsideS: number; heldS: number } | null;
}

interface Asked {
  siteId: string;
  sensorId: string;
  from: Date;
  to: Date;
}

/**
 * What a sensor read over a span: of its readings themselves, or of the hours or days they are rolled up to; those that are not
 * over, or not rolled up anew yet, are worked out on the spot, so that nothing shown is late. Where the readings were retired,
 * hours stand for them.
 */
export async function drawnBuckets(asked: Asked, of: 'readings' | 'hours' | 'days'): Promise<DrawnBuckets> {
  if (of !== 'readings') return await rolled(asked, of === 'days');
  const { siteId, sensorId, from, to } = asked;
  const bucketS = (to.getTime() - from.getTime()) / 1000 / BUCKETS;
  const { buckets, usualMs } = await drawnReadings(siteId, sensorId, { from, to, bucketS });
  if (buckets.length === 0) return await rolled(asked, false);
  return { buckets, gapMs: Math.max(GAP_STEPS * (usualMs ?? 0), LEAST_GAP_MS), outside: null };
}

async function rolled({ siteId, sensorId, from, to }: Asked, isDay: boolean): Promise<DrawnBuckets> {
  const [kept, due] = await Promise.all([
    rolledUp(siteId, sensorId, { from, to, isDay }),
    dueWithin(siteId, sensorId, from, to),
  ]);
  const open = due.filter((one) => one.isDay === isDay && one.fromMs >= from.getTime());
  const fresh = await workedOut(siteId, open);
  const isOpen = new Set(open.map(({ fromMs }) => fromMs));
  const rows = [...kept.filter(({ fromMs }) => !isOpen.has(fromMs)), ...fresh]
    .filter(({ byHand }) => !byHand)
    .sort((a, b) => a.fromMs - b.fromMs);
  return {
    buckets: rows.flatMap(bucketOf),
    gapMs: gapOf(rows, isDay ? 24 * HOUR_MS : HOUR_MS),
    outside: {
      outsideS: rows.reduce((sum, { good }) => sum + good.outsideS, 0),
      heldS: rows.reduce((sum, { good }) => sum + good.heldS, 0),
    },
  };
}

function bucketOf({ fromMs, toMs, good, lateCount }: RollUp): Bucket[] {
  const { count, low, high } = good;
  if (count === 0 || low === null || high === null) return [];
  return [{ fromMs, toMs, low, high, mean: good.sum / count, count, ...lateOf(lateCount, count) }];
}

function lateOf(lateCount: number | null, count: number): Pick<Bucket, 'late' | 'notCounted'> {
  return lateCount === null ? { late: 0, notCounted: count } : { late: lateCount, notCounted: 0 };
}

/** Where there is something in each hour, one without is a gap; a logger that reads twice a day has none between. */
function gapOf(rows: readonly RollUp[], lengthMs: number): number {
  const steps = rows.slice(1).map(({ fromMs }, i) => fromMs - (rows[i]?.fromMs ?? fromMs));
  const usualMs = steps.sort((a, b) => a - b)[Math.floor(steps.length / 2)] ?? lengthMs;
  return usualMs < 1.5 * lengthMs ? lengthMs / 2 : GAP_STEPS * usualMs - lengthMs;
}
