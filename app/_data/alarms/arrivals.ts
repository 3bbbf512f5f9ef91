import 'server-only';
import type { Gone } from '#core/alarms/condition';
import type { SeenOf } from '#core/alarms/pass-site';
import { originOf, qualityOf } from '../readings/codes';
import type { Transaction } from '../transaction';

/** Batches taken at once: enough to keep up, few enough that a turn is short. */
const BATCHES = 200;
/** Readings after which no further batch is taken at once; one body may hold 20 000. */
const READINGS = 50_000;

interface Row {
  id: string;
  receivedAt: Date;
  sensorIds: string[];
  ats: Date[];
  values: number[];
  qualities: number[];
  origins: number[];
  goneIds: string[];
  /** Batches that were looked at, these among them. */
  looked: number;
}

/** Readings that came, and what they came in. */
export interface Taken {
  ids: string[];
  seen: SeenOf[];
  /** Sensors that were said to be gone, by id. */
  gone: Gone[];
  /** Whether more may be waiting than was taken. */
  isMore: boolean;
}

/**
 * Takes what arrived at a site and was not judged yet, in the order it came; the sensor of each is told by its id. Where much
 * is waiting that is some of it, one batch at least, so that a turn stays short and its memory small.
 *
 * @param most   readings after which no further batch is taken
 */
export async function takeArrivals(tx: Transaction, siteId: string, most = READINGS): Promise<Taken> {
  const rows = await tx.$queryRaw<Row[]>`
    SELECT id, received_at AS "receivedAt", sensor_ids AS "sensorIds", ats, "values", qualities, origins, gone_ids AS "goneIds", looked
      FROM (SELECT *, sum(cardinality(sensor_ids)) OVER (ORDER BY received_at, id) - cardinality(sensor_ids) AS before,
                   (count(*) OVER ())::int AS looked
              FROM (SELECT * FROM reading_arrival WHERE site_id = ${siteId}::uuid
                     ORDER BY received_at, id LIMIT ${BATCHES}) AS first) AS waiting
     WHERE before < ${most} ORDER BY received_at, id`;
  const gone = rows.flatMap(({ goneIds, receivedAt }) =>
    goneIds.length === 0 ? [] : [{ sensors: goneIds, cameMs: receivedAt.getTime() }],
  );
  const looked = rows[0]?.looked ?? 0;
  const isMore = rows.length < looked || looked === BATCHES;
  return { ids: rows.map(({ id }) => id), seen: rows.flatMap(seenIn), gone, isMore };
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
