import type { Copy } from '../_support/database';
import type { Sent } from './gateway';
import type { LoadSite } from './load-site';

/** What a load came to. */
export interface Count {
  /** Readings answered as stored, and those of them that are not there or hold another value. */
  answered: number;
  missing: string[];
  /** Readings that are there more than once. */
  twice: number;
  /** Alarms that were to be raised, those that were not, and those raised more than once. */
  crossings: number;
  missed: string[];
  doubled: string[];
  /** Alarms raised of which nothing that was answered tells. */
  strange: number;
  /** Batches no alarm was held to. */
  waiting: number;
  /** s of each alarm from its reading's arrival until it was raised, and until every page was told. */
  raisedS: number[];
  toldS: number[];
}

const READINGS = `SELECT sensor_id AS sensor, (extract(epoch FROM "at") * 1000)::float8 AS "atMs", value FROM reading WHERE site_id = $1`;
const RAISED = `
  SELECT s.id AS sensor, o.began_at AS "beganAt", e.at AS "raisedAt", r.received_at AS "receivedAt"
    FROM alarm_occurrence o
    JOIN alarm_event e ON e.site_id = o.site_id AND e.occurrence_id = o.id AND e.kind = 'raised'
    JOIN alarm_definition d ON d.site_id = o.site_id AND d.id = o.alarm_id
    JOIN sensor s ON s.site_id = o.site_id AND s.key || '-warm' = d.key
    LEFT JOIN reading r ON r.site_id = o.site_id AND r.sensor_id = s.id AND r."at" = o.began_at
   WHERE o.site_id = $1`;

interface Raised {
  sensor: string;
  beganAt: Date;
  raisedAt: Date;
  receivedAt: Date | null;
}

/**
 * Compares what a gateway was answered, and what alarms that calls for, with what is there.
 *
 * @param told   when each page was told of alarms, ms
 */
export async function countLoad(
  query: Copy['query'],
  { siteId }: LoadSite,
  sent: Pick<Sent, 'answered' | 'crossings'>,
  told: readonly number[][],
): Promise<Count> {
  const { rows: readings } = await query(READINGS, [siteId]);
  const there = new Map(readings.map(({ sensor, atMs, value }) => [`${sensor} ${atMs}`, value]));
  const { rows: raised }: { rows: Raised[] } = await query(RAISED, [siteId]);
  const times = new Map<string, number>();
  for (const { sensor, beganAt } of raised) {
    const key = `${sensor} ${beganAt.getTime()}`;
    times.set(key, (times.get(key) ?? 0) + 1);
  }
  const called = sent.crossings.map(({ sensor, atMs }) => `${sensor} ${atMs}`);
  const { rows: waiting } = await query('SELECT count(*)::int AS n FROM reading_arrival');
  return {
    answered: sent.answered.size,
    missing: [...sent.answered].filter(([key, value]) => there.get(key) !== value).map(([key]) => key),
    twice: readings.length - there.size,
    crossings: called.length,
    missed: called.filter((key) => !times.has(key)).map((key) => neighbours(key, sent, raised)),
    doubled: [...times].filter(([, count]) => count > 1).map(([key]) => key),
    strange: [...times.keys()].filter((key) => !called.includes(key)).length,
    waiting: waiting[0].n,
    raisedS: raised.flatMap(({ raisedAt, receivedAt }) =>
      receivedAt ? [seconds(receivedAt, raisedAt.getTime())] : [],
    ),
    toldS: raised.flatMap((one) => toldAfter(one, told)),
  };
}

/** An alarm that was missed, and those of its sensor that were raised around it. */
function neighbours(missed: string, { crossings }: Pick<Sent, 'crossings'>, raised: readonly Raised[]): string {
  const [sensor, atMs] = missed.split(' ');
  const nth = crossings.findIndex((one) => one.sensor === sensor && one.atMs === Number(atMs));
  const others = raised
    .filter((one) => one.sensor === sensor)
    .map(({ beganAt }) => seconds(beganAt, Number(atMs)).toFixed(1));
  return `number ${nth + 1} of ${crossings.length}, ${new Date(Number(atMs)).toISOString()}, others ${others.join(', ')} s before`;
}

/** s from the arrival until the last of the pages was told. */
function toldAfter({ raisedAt, receivedAt }: Raised, told: readonly number[][]): number[] {
  const firsts = told.map((page) => page.find((at) => at >= raisedAt.getTime()));
  if (!receivedAt || firsts.length === 0 || firsts.includes(undefined)) return [];
  return [seconds(receivedAt, Math.max(...firsts.map((at) => at ?? 0)))];
}

function seconds(from: Date, toMs: number): number {
  return (toMs - from.getTime()) / 1000;
}

/** The value under which a part of all lies. @param part   0 to 1 */
export function quantile(values: readonly number[], part: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * part))] ?? Number.NaN;
}
