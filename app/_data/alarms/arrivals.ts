import 'server-only';
import type { SeenOf } from '#core/alarms/pass-site';
import { originOf, qualityOf } from '../readings/codes';
import type { Transaction } from '../transaction';

/** Batches taken at once: enough to keep up, few enough that a turn is short. */
const BATCHES = 200;

interface Row {
  id: string;
  receivedAt: Date;
  sensorIds: string[];
  ats: Date[];
  values: number[];
  qualities: number[];
  origins: number[];
}

/** Readings that came, and what they came in. */
export interface Taken {
  ids: string[];
  seen: SeenOf[];
}

/** Takes what arrived at a site and was not judged yet, in the order it came; the sensor of each is told by its id. */
export async function takeArrivals(tx: Transaction, siteId: string): Promise<Taken> {
  const rows = await tx.$queryRaw<Row[]>`
    SELECT id, received_at AS "receivedAt", sensor_ids AS "sensorIds", ats, "values", qualities, origins
      FROM reading_arrival WHERE site_id = ${siteId}::uuid ORDER BY received_at, id LIMIT ${BATCHES}`;
  return { ids: rows.map(({ id }) => id), seen: rows.flatMap(seenIn) };
}

function seenIn({ receivedAt, sensorIds, ats, values, qualities, origins }: Row): SeenOf[] {
  const cameMs = receivedAt.getTime();
  return sensorIds.map((sensor, i) => ({
    sensor,
    cameMs,
    // A clock that is ahead must not make what comes after it look late.
    atMs: Math.min(ats[i]?.getTime() ?? cameMs, cameMs),
    value: Number(values[i]),
    quality: qualityOf(qualities[i]),
    isByHand: originOf(origins[i]) === 'hand',
  }));
}

/** Removes what was judged. */
export async function removeArrivals(tx: Transaction, siteId: string, ids: readonly string[]): Promise<void> {
  if (ids.length === 0) return;
  await tx.readingArrival.deleteMany({ where: { siteId, id: { in: [...ids] } } });
}

/** Whether more is waiting than the batches that were taken. */
export async function isMoreWaiting(tx: Transaction, siteId: string, taken: number): Promise<boolean> {
  return (
    (await tx.readingArrival.findMany({ where: { siteId }, select: { id: true }, skip: taken, take: 1 })).length > 0
  );
}
