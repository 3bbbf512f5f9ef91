import 'server-only';
import type { Asking } from './asking';
import { qualityOf } from './codes';
import type { InputsAt } from './derived-inputs';

/** An hour of a sensor: the mean of its good readings, and how long they lay above a value. */
export interface HourOf {
  fromMs: number;
  mean: number;
  aboveS: number;
}

const HOURS = `
  SELECT (floor(extract(epoch FROM "at") / 3600) * 3600000)::float8 AS "fromMs", avg(value) AS mean,
         (coalesce(sum(least(extract(epoch FROM next - "at"), $6::float8)) FILTER (WHERE value > $5::float8), 0))::float8 AS "aboveS"
    FROM (SELECT "at", value, coalesce(lead("at") OVER (ORDER BY "at"), to_timestamp($4::float8 / 1000.0)) AS next
            FROM (SELECT DISTINCT ON ("at") "at", origin, value, quality FROM reading
                   WHERE site_id = $1::uuid AND sensor_id = $2::uuid AND origin <> 3
                     AND "at" >= to_timestamp($3::float8 / 1000.0) AND "at" < to_timestamp($4::float8 / 1000.0)
                   ORDER BY "at", origin DESC, revision DESC) s WHERE quality = 0) h
   GROUP BY 1 ORDER BY 1`;

/**
 * Hours of a sensor within a span.
 *
 * @param span   from and to in ms since 1970, whole hours; what counts as above; and how long a reading holds, s
 */
export async function hoursOf(
  asking: Asking,
  siteId: string,
  sensorId: string,
  span: { fromMs: number; toMs: number; above: number; holdS: number },
): Promise<HourOf[]> {
  const asked = [siteId, sensorId, span.fromMs, span.toMs, span.above, span.holdS];
  return (await asking(HOURS, asked)) as unknown as HourOf[];
}

const STANDING = `
  SELECT DISTINCT ON ("at") (extract(epoch FROM "at") * 1000)::float8 AS "atMs", value, quality, revision FROM reading
   WHERE site_id = $1::uuid AND sensor_id = $2::uuid
     AND "at" >= to_timestamp($3::float8 / 1000.0) AND "at" <= to_timestamp($4::float8 / 1000.0)
   ORDER BY "at", revision DESC`;
const NEWEST = `
  SELECT (extract(epoch FROM max("at")) * 1000)::float8 AS "atMs" FROM reading
   WHERE site_id = $1::uuid AND sensor_id = $2::uuid AND "at" >= to_timestamp($3::float8 / 1000.0)`;

/**
 * What stands of a derived series within a span, by instant, and the newest instant of its leading sensor since its beginning.
 *
 * @returns   ms since 1970; -Infinity where nothing was read since
 */
export async function standingHours(
  asking: Asking,
  siteId: string,
  { seriesId, lead, fromMs, toMs }: { seriesId: string; lead: string; fromMs: number; toMs: number },
): Promise<{ newestMs: number; stood: Map<number, NonNullable<InputsAt['standing']>> }> {
  const rows = await asking(STANDING, [siteId, seriesId, fromMs, toMs]);
  const [newest] = await asking(NEWEST, [siteId, lead, fromMs]);
  const stood = rows.map(({ atMs, value, quality, revision }) => {
    const standing = { value: Number(value), quality: qualityOf(quality), revision: Number(revision) };
    return [Number(atMs), standing] as const;
  });
  return { newestMs: newest?.atMs === null ? -Infinity : Number(newest?.atMs), stood: new Map(stood) };
}
