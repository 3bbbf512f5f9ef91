import 'server-only';
import { groupBy } from '#core/group-by';
import type { Origin, Quality } from '#core/readings/reading';
import type { Transaction } from '../transaction';
import { arrayText, type Asking, askingIn } from './asking';
import { originCode, qualityCode } from './codes';
import { keepLatest } from './keep-latest';
import { ensureParts, monthsFrom } from './parts';
import { type Touched, touchStretches } from './touched';

/** What one sensor told over a long time, in columns, in order of time. */
export interface SensorHistory {
  /** One of the site's own: whoever stores has made sure. */
  sensorId: string;
  origin: Origin;
  /** ms since 1970. */
  atMs: readonly number[];
  /** Finite; in the facility file's unit of the sensor's quantity. */
  values: readonly number[];
  /** Those that are not good, by their place in the columns. */
  odd: ReadonlyMap<number, { quality: Exclude<Quality, 'good'>; reason: string }>;
  /** What each came by, by its place; a device's source when left out. */
  cameBy?: readonly string[];
  /** Which revision each is, by its place; the first when left out. */
  revisions?: readonly number[];
}

/** s between a reading and its arrival, as a gateway needs. */
const UNDER_WAY_S = 2;
const DAY_MS = 86_400_000;

const ADD = `
  INSERT INTO reading (site_id, sensor_id, "at", origin, revision, value, quality, reason, came_by, received_at)
  SELECT $1::uuid, $2::uuid, to_timestamp(u.at / 1000.0), $3::int2, u.revision, u.value, u.quality, u.reason, u.came_by,
         to_timestamp(u.at / 1000.0 + ${UNDER_WAY_S})
    FROM unnest($4::float8[], $5::float8[], $6::int2[], $7::text[], $8::uuid[],
                $9::int2[]) AS u(at, value, quality, reason, came_by, revision)`;

/**
 * Stores what was read long ago, as if it had come then. No alarm is judged by it and nobody is told: what it called for
 * stands in the record already.
 *
 * @param histories   of sensors of the site
 * @throws            when one of them is there already
 */
export async function storeHistory(
  tx: Transaction,
  siteId: string,
  histories: readonly SensorHistory[],
): Promise<void> {
  const told = histories.filter(({ atMs }) => atMs.length > 0);
  await ensureParts(told.flatMap(({ atMs }) => monthsWithin(atMs)));
  const asking = askingIn(tx);
  for (const history of told) {
    await add(asking, siteId, history);
    await keepLast(asking, siteId, history);
  }
  await touchStretches(asking, siteId, told.flatMap(daysOf));
}

/** A stretch a day. */
function daysOf({ sensorId, atMs }: SensorHistory): Touched[] {
  const days = groupBy(atMs, (at) => Math.floor(at / DAY_MS));
  return [...days.values()].map((day) => ({ sensorId, fromMs: day[0] ?? 0, toMs: day.at(-1) ?? 0 }));
}

function monthsWithin(atMs: readonly number[]): Date[] {
  const first = new Date(atMs[0] ?? 0);
  const last = new Date(atMs.at(-1) ?? 0);
  const months = 12 * (last.getUTCFullYear() - first.getUTCFullYear()) + last.getUTCMonth() - first.getUTCMonth();
  return monthsFrom(first, months + 1);
}

async function add(
  asking: Asking,
  siteId: string,
  { sensorId, origin, atMs, values, odd, cameBy, revisions }: SensorHistory,
): Promise<void> {
  await asking(ADD, [
    siteId,
    sensorId,
    originCode(origin),
    arrayText(atMs),
    arrayText(values),
    arrayText(values.map((_, i) => qualityCode(odd.get(i)?.quality ?? 'good'))),
    arrayText(values.map((_, i) => odd.get(i)?.reason ?? null)),
    arrayText(values.map((_, i) => cameBy?.[i] ?? null)),
    arrayText(values.map((_, i) => revisions?.[i] ?? 0)),
  ]);
}

/** The last of them, and the last good one, are what lists show. */
async function keepLast(asking: Asking, siteId: string, history: SensorHistory): Promise<void> {
  const { sensorId, origin, atMs, values, odd } = history;
  const last = values.length - 1;
  const good = values.findLastIndex((_, i) => !odd.has(i));
  const kept = [...new Set([good, last])].filter((i) => i >= 0);
  const readings = kept.map((i) => ({
    sensorId,
    origin,
    at: new Date(atMs[i] ?? 0),
    value: values[i] ?? 0,
    ...(odd.get(i) ?? { quality: 'good' as const }),
  }));
  await keepLatest(asking, siteId, readings, new Set(), new Date((atMs[last] ?? 0) + UNDER_WAY_S * 1000));
}
