import 'server-only';
import { pool } from '../pool';
import type { SensorRow } from './sensors';
import type { Window } from './window';

/** A point of a drawn series. */
export interface SeriesPoint {
  atMs: number;
  value: number;
}

/** A sensor over a window, thinned out so that its shape is kept: of each slice the first, least, greatest and last. */
export interface NearSeries {
  sensor: SensorRow;
  /** Those that may be trusted, good and suspect, in order of time. */
  points: SeriesPoint[];
  /** Readings there were, and how many of them were bad and are not drawn. */
  count: number;
  bad: number;
  /** When each was taken by hand rather than by a device or a file. */
  byHand: SeriesPoint[];
}

/** Slices of a window: about as many as a drawing has room for. */
const SLICES = 240;

/** One question for all sensors: of what was corrected the newest revision, in slices of the window. */
const SLICED = `
  WITH newest AS (
    SELECT DISTINCT ON (sensor_id, "at", origin) sensor_id, "at", origin, value, quality
      FROM reading
     WHERE site_id = $1 AND sensor_id = ANY ($2::uuid[]) AND "at" >= $3 AND "at" < $4
     ORDER BY sensor_id, "at", origin, revision DESC),
  sliced AS (
    SELECT sensor_id, origin = 3 AS hand,
           CASE WHEN origin = 3 THEN extract(epoch FROM "at")::float8
                ELSE width_bucket(extract(epoch FROM "at")::float8, $5::float8, $6::float8, ${SLICES}) END AS slice,
           "at", value, quality
      FROM newest)
  SELECT sensor_id, hand, count(*)::int AS count, (count(*) FILTER (WHERE quality = 2))::int AS bad,
         array_agg(extract(epoch FROM "at")::float8 * 1000 ORDER BY "at") FILTER (WHERE quality < 2) AS ats,
         array_agg(value ORDER BY "at") FILTER (WHERE quality < 2) AS values
    FROM sliced GROUP BY sensor_id, hand, slice ORDER BY sensor_id, slice`;

interface Slice {
  sensor_id: string;
  hand: boolean;
  count: number;
  bad: number;
  ats: number[] | null;
  values: number[] | null;
}

/** What sensors read within a window. A sensor without any reading there has no series. */
export async function nearSeries({ siteId, from, to }: Window, sensors: readonly SensorRow[]): Promise<NearSeries[]> {
  const ids = sensors.map(({ id }) => id);
  const edges = [from.getTime() / 1000, to.getTime() / 1000];
  const { rows } = await pool().query<Slice>(SLICED, [siteId, ids, from, to, ...edges]);
  return sensors.flatMap((sensor) => {
    const slices = rows.filter(({ sensor_id }) => sensor_id === sensor.id);
    if (slices.length === 0) return [];
    const count = slices.reduce((sum, slice) => sum + slice.count, 0);
    const bad = slices.reduce((sum, slice) => sum + slice.bad, 0);
    const points = slices.filter(({ hand }) => !hand).flatMap(thinned);
    return [{ sensor, points, count, bad, byHand: slices.filter(({ hand }) => hand).flatMap(thinned) }];
  });
}

function thinned({ ats, values }: Slice): SeriesPoint[] {
  const all = (ats ?? []).map((atMs, i) => ({ atMs, value: values?.[i] ?? 0 }));
  const [first] = all;
  const last = all.at(-1);
  if (!first || !last) return [];
  const least = all.reduce((a, b) => (b.value < a.value ? b : a));
  const most = all.reduce((a, b) => (b.value > a.value ? b : a));
  return [...new Set([first, least, most, last])].sort((a, b) => a.atMs - b.atMs);
}
