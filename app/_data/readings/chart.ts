import 'server-only';
import type { Origin, Quality } from '#core/readings/reading';
import type { Bucket } from '#core/readings/spans';
import { pool } from '../pool';
import { originOf, qualityOf } from './codes';

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
  /** Those shown by themselves, the latest of them when there are too many. */
  points: ShownPoint[];
  /** How many there are. */
  pointCount: number;
}

/** Readings shown by themselves. */
const MOST_POINTS = 400;

// Of what was corrected, the correction.
const STANDING = `
  SELECT DISTINCT ON ("at", origin) "at", origin, value, quality, reason, flag FROM reading
   WHERE site_id = $1 AND sensor_id = $2 AND "at" >= $3 AND "at" < $4
   ORDER BY "at", origin, revision DESC`;
const PLAIN = `SELECT "at", value, extract(epoch FROM "at" - lag("at") OVER (ORDER BY "at")) AS step
                 FROM (${STANDING}) s WHERE quality = 0 AND origin < 3`;
const MS = (instant: string) => `(extract(epoch FROM ${instant}) * 1000)::float8`;
const BUCKETS = `
  WITH plain AS (${PLAIN}),
       usual AS (SELECT percentile_cont(0.5) WITHIN GROUP (ORDER BY step) AS step FROM plain)
  SELECT ${MS('min("at")')} AS "fromMs", ${MS('max("at")')} AS "toMs", min(value) AS low, max(value) AS high,
         avg(value) AS mean, count(*)::int AS count, (usual.step * 1000)::float8 AS "usualMs"
    FROM plain, usual
   GROUP BY floor(extract(epoch FROM "at" - $3::timestamptz) / $5), usual.step
   ORDER BY 1`;
const POINTS = `
  SELECT ${MS('"at"')} AS "atMs", value, quality, reason, flag, origin, count(*) OVER ()::int AS count
    FROM (${STANDING}) s WHERE quality > 0 OR origin = 3
   ORDER BY "at" DESC LIMIT ${MOST_POINTS}`;

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
  const asked = [siteId, sensorId, from, to];
  const [buckets, points] = await Promise.all([
    pool().query<Bucket & { usualMs: number | null }>(BUCKETS, [...asked, bucketS]),
    pool().query<Omit<ShownPoint, 'quality' | 'origin'> & { quality: number; origin: number; count: number }>(
      POINTS,
      asked,
    ),
  ]);
  return {
    buckets: buckets.rows.map(({ usualMs: _usual, ...bucket }) => bucket),
    usualMs: buckets.rows[0]?.usualMs ?? null,
    points: points.rows
      .map(({ count: _count, quality, origin, ...point }) => ({
        ...point,
        quality: qualityOf(quality),
        origin: originOf(origin),
      }))
      .reverse(),
    pointCount: points.rows[0]?.count ?? 0,
  };
}

/** Every reading of a sensor over a span of time as it stands, in order of time. @param most   and no more than these */
export async function plainReadings(
  siteId: string,
  sensorId: string,
  { from, to, most }: { from: Date; to: Date; most: number },
): Promise<ShownPoint[]> {
  const { rows } = await pool().query<Omit<ShownPoint, 'quality' | 'origin'> & { quality: number; origin: number }>(
    `SELECT ${MS('"at"')} AS "atMs", value, quality, reason, flag, origin FROM (${STANDING}) s ORDER BY "at", origin LIMIT $5`,
    [siteId, sensorId, from, to, most],
  );
  return rows.map(({ quality, origin, ...one }) => ({ ...one, quality: qualityOf(quality), origin: originOf(origin) }));
}

/** An alarm that was raised. */
export interface RaisedAlarm {
  id: string;
  atMs: number;
  name: string;
}

/** Alarms of a system that were raised over a span of time by what a sensor read, in order of time. */
export async function raisedBy(
  siteId: string,
  alarmIds: readonly string[],
  { from, to }: { from: Date; to: Date },
): Promise<RaisedAlarm[]> {
  const { rows } = await pool().query<RaisedAlarm>(
    `SELECT o.id, ${MS('o.raised_at')} AS "atMs", d.name FROM alarm_occurrence o
       JOIN alarm_definition d ON d.site_id = o.site_id AND d.id = o.alarm_id
      WHERE o.site_id = $1 AND o.alarm_id = ANY($2::uuid[]) AND o.raised_at >= $3 AND o.raised_at < $4
      ORDER BY o.raised_at LIMIT ${MOST_POINTS}`,
    [siteId, [...alarmIds], from, to],
  );
  return rows;
}

/** Ids of the alarms of a system by their keys. */
export async function alarmIdsOf(siteId: string, systemId: string, keys: readonly string[]): Promise<string[]> {
  const { rows } = await pool().query<{ id: string }>(
    'SELECT id FROM alarm_definition WHERE site_id = $1 AND system_id = $2 AND key = ANY($3) AND retired_at IS NULL',
    [siteId, systemId, [...keys]],
  );
  return rows.map(({ id }) => id);
}
