import 'server-only';
import type { Origin, Quality } from '#core/readings/reading';
import type { Bucket } from '#core/readings/spans';
import { pool } from '../pool';
import { originOf, qualityOf } from './codes';
import { isReadSql, lateSql } from './late-sql';

/** A reading that is shown by itself: one that is not good, or that somebody took by hand. */
export interface ShownPoint {
  atMs: number;
  value: number;
  quality: Quality;
  reason: string | null;
  flag: string | null;
  origin: Origin;
}

/** Readings over a span of time, few enough to be drawn. */
export interface Drawn {
  buckets: Bucket[];
  /** The time that usually lies between two good readings, ms; null with fewer than two. */
  usualMs: number | null;
}

/** Readings shown by themselves. */
const MOST_POINTS = 400;
/** Of more than these it is not said how many there are. */
const MOST_COUNTED = 5000;

// Of what was corrected, the correction.
const STANDING = `
  SELECT DISTINCT ON ("at", origin) "at", origin, value, quality, reason, flag, revision, received_at FROM reading
   WHERE site_id = $1 AND sensor_id = $2 AND "at" >= $3 AND "at" < $4
   ORDER BY "at", origin, revision DESC`;
const IS_LATE = lateSql('s.', 'of.is_read');
const OF_SENSOR = `(SELECT ${isReadSql('$2')} AS is_read) of`;
const PLAIN = `SELECT "at", value, ${IS_LATE} AS is_late, date_part('epoch', "at" - lag("at") OVER (ORDER BY "at")) AS step
                 FROM (${STANDING}) s, ${OF_SENSOR} WHERE quality = 0 AND origin < 3`;
const MS = (instant: string) => `(extract(epoch FROM ${instant}) * 1000)::float8`;
const BUCKETS = `
  WITH plain AS (${PLAIN}),
       usual AS MATERIALIZED (SELECT percentile_cont(0.5) WITHIN GROUP (ORDER BY step) AS step FROM plain)
  SELECT ${MS('min("at")')} AS "fromMs", ${MS('max("at")')} AS "toMs", min(value) AS low, max(value) AS high,
         avg(value) AS mean, count(*)::int AS count, (count(*) FILTER (WHERE is_late))::int AS late, 0 AS "notCounted",
         (usual.step * 1000)::float8 AS "usualMs"
    FROM plain, usual
   GROUP BY floor(date_part('epoch', "at" - $3::timestamptz) / $5::float8), usual.step
   ORDER BY 1`;
// Through the index of those that are odd: a year of them is found without looking through the others.
const ODD = `
  SELECT "at", value, quality, reason, flag, origin FROM reading r
   WHERE site_id = $1 AND sensor_id = $2 AND "at" >= $3 AND "at" < $4 AND (quality > 0 OR origin = 3)
     AND NOT EXISTS (SELECT FROM reading n WHERE n.site_id = r.site_id AND n.sensor_id = r.sensor_id AND n."at" = r."at"
                        AND n.origin = r.origin AND n.revision > r.revision)
   ORDER BY "at" DESC LIMIT ${MOST_COUNTED + 1}`;
const POINTS = `
  SELECT ${MS('"at"')} AS "atMs", value, quality, reason, flag, origin, count(*) OVER ()::int AS count
    FROM (${ODD}) s ORDER BY "at" DESC LIMIT ${MOST_POINTS}`;

/**
 * Readings of a sensor over a span of time, worked down to some hundred buckets: of each the lowest, the highest and the
 * average of what is good, so that no peak is lost.
 *
 * @param bucketS   length of a bucket, s
 */
export async function drawnReadings(
  siteId: string,
  sensorId: string,
  { from, to, bucketS }: { from: Date; to: Date; bucketS: number },
): Promise<Drawn> {
  const { rows } = await pool().query<Bucket & { usualMs: number | null }>(BUCKETS, [
    siteId,
    sensorId,
    from,
    to,
    bucketS,
  ]);
  return { buckets: rows.map(({ usualMs: _usual, ...bucket }) => bucket), usualMs: rows[0]?.usualMs ?? null };
}

/** Readings that are shown by themselves: not good, or by hand. In order of time; the latest when there are too many. */
export async function shownPoints(
  siteId: string,
  sensorId: string,
  { from, to }: { from: Date; to: Date },
): Promise<{ points: ShownPoint[]; count: number }> {
  const { rows } = await pool().query<
    Omit<ShownPoint, 'quality' | 'origin'> & { quality: number; origin: number; count: number }
  >(POINTS, [siteId, sensorId, from, to]);
  const points = rows.map(({ count: _count, quality, origin, ...point }) => ({
    ...point,
    quality: qualityOf(quality),
    origin: originOf(origin),
  }));
  return { points: points.reverse(), count: rows[0]?.count ?? 0 };
}

/** Every reading of a sensor over a span of time as it stands, in order of time. @param most   and no more than these */
export async function plainReadings(
  siteId: string,
  sensorId: string,
  { from, to, most }: { from: Date; to: Date; most: number },
): Promise<(ShownPoint & { receivedMs: number; isLate: boolean })[]> {
  const { rows } = await pool().query<
    Omit<ShownPoint, 'quality' | 'origin'> & { quality: number; origin: number; receivedMs: number; isLate: boolean }
  >(
    `SELECT ${MS('"at"')} AS "atMs", value, quality, reason, flag, origin, ${MS('received_at')} AS "receivedMs",
            ${IS_LATE} AS "isLate"
       FROM (${STANDING}) s, ${OF_SENSOR} ORDER BY "at", origin LIMIT $5`,
    [siteId, sensorId, from, to, most],
  );
  return rows.map(({ quality, origin, ...one }) => ({ ...one, quality: qualityOf(quality), origin: originOf(origin) }));
}
