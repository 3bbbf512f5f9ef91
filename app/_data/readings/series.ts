import 'server-only';
import type { Reading } from '#core/readings/reading';
import { pool } from '../pool';
import { originOf, qualityOf } from './codes';

/** The newest reading of a sensor. */
export interface Latest extends Reading {
  receivedAtMs: number;
  /** The newest that is good, where there is one: when it was taken and what it was. */
  goodAtMs?: number;
  goodValue?: number;
}

const SERIES = `
  SELECT DISTINCT ON ("at", origin) sensor_id, "at", origin, value, quality, reason FROM reading
   WHERE site_id = $1 AND sensor_id = $2 AND "at" >= $3 AND "at" < $4
   ORDER BY "at", origin, revision DESC`;
const COLUMNS = '"at", origin, value, quality, reason, received_at, good_at, good_value';
const LATEST = `
  SELECT sensor_id, ${COLUMNS} FROM reading_latest WHERE site_id = $1
   UNION ALL
  SELECT id, ${COLUMNS.replace('origin', '1::int2')} FROM derived_series
   WHERE site_id = $1 AND retired_at IS NULL AND "at" IS NOT NULL`;

/** What arrived and no alarm was held to yet is not counted: it is still to be held, in its turn. */
const LATEST_JUDGED = `
  SELECT * FROM (${LATEST}) AS l
   WHERE NOT EXISTS (SELECT FROM reading_arrival a WHERE a.site_id = $1 AND a.received_at = l.received_at
                        AND l.sensor_id = ANY(a.sensor_ids))`;

interface Row {
  sensor_id: string;
  at: Date;
  origin: number;
  value: number;
  quality: number;
  reason: string | null;
}

interface LatestRow extends Row {
  received_at: Date;
  good_at: Date | null;
  good_value: number | null;
}

/**
 * Readings of a sensor as they stand: of what was corrected, the correction.
 *
 * @param from   from this instant on
 * @param to     up to this one and without it
 * @returns      in order of time; of one instant the device's, the file's, the one by hand
 */
export async function readSeries(siteId: string, sensorId: string, from: Date, to: Date): Promise<Reading[]> {
  const { rows } = await pool().query<Row>(SERIES, [siteId, sensorId, from, to]);
  return rows.map(readingOf);
}

/** The newest reading of each sensor and derived series of a site that has one, by its id. */
export async function latestOf(siteId: string): Promise<Map<string, Latest>> {
  return await latestBy(LATEST, siteId);
}

/** The same of those sensors whose newest reading the alarms of the site were held to already. */
export async function latestJudgedOf(siteId: string): Promise<Map<string, Latest>> {
  return await latestBy(LATEST_JUDGED, siteId);
}

async function latestBy(query: string, siteId: string): Promise<Map<string, Latest>> {
  const { rows } = await pool().query<LatestRow>(query, [siteId]);
  return new Map(rows.map((row) => [row.sensor_id, latestFrom(row)] as const));
}

function latestFrom(row: LatestRow): Latest {
  return {
    ...readingOf(row),
    receivedAtMs: row.received_at.getTime(),
    ...(row.good_at && row.good_value !== null ? { goodAtMs: row.good_at.getTime(), goodValue: row.good_value } : {}),
  };
}

function readingOf({ sensor_id, at, origin, value, quality, reason }: Row): Reading {
  return {
    sensor: sensor_id,
    atMs: at.getTime(),
    value,
    quality: qualityOf(quality),
    ...(reason === null ? {} : { reason }),
    origin: originOf(origin),
  };
}
