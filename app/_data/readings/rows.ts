import 'server-only';
import { arrayText, type Asking } from './asking';
import { originCode, qualityCode } from './codes';
import type { NewReading, Storing } from './store-readings';

/** What stands for a sensor, an instant and an origin. */
export interface KeptValue {
  value: number;
  revision: number;
}

/** A reading that supersedes. */
export interface Revised extends NewReading {
  revision: number;
}

const COLUMNS = `site_id, sensor_id, "at", origin, revision, value, quality, reason, flag, came_by, received_at`;
// In the order of the key, so that two who store the same readings at once wait for one another and never in a circle.
const GIVEN = `
  INSERT INTO reading (${COLUMNS})
  SELECT $1::uuid, u.sensor, to_timestamp(u.at / 1000.0), u.origin, u.revision, u.value, u.quality, u.reason, u.flag,
         $10::uuid, $11::timestamptz
    FROM unnest($2::uuid[], $3::float8[], $4::int2[], $5::int2[], $6::float8[], $7::int2[], $8::text[], $9::text[])
         AS u(sensor, at, origin, revision, value, quality, reason, flag)
   ORDER BY 2, 3, 4, 5`;
const INSTANT = `(extract(epoch FROM "at") * 1000)::float8`;
const INSERT_NEW = `${GIVEN} ON CONFLICT DO NOTHING RETURNING sensor_id AS sensor, ${INSTANT} AS at, origin`;
const NEWEST = `
  SELECT DISTINCT ON (r.sensor_id, r."at", r.origin) r.sensor_id AS sensor, u.at AS at, r.origin, r.revision, r.value
    FROM unnest($2::uuid[], $3::float8[], $4::int2[]) AS u(sensor, at, origin)
    JOIN reading r ON r.site_id = $1::uuid AND r.sensor_id = u.sensor AND r."at" = to_timestamp(u.at / 1000.0)::timestamptz(3)
         AND r.origin = u.origin
   ORDER BY r.sensor_id, r."at", r.origin, r.revision DESC`;

/** What tells a reading from any other of the site. */
export function keyOf({ sensorId, at, origin }: Pick<NewReading, 'sensorId' | 'at' | 'origin'>): string {
  return `${sensorId} ${at.getTime()} ${originCode(origin)}`;
}

/** Stores those of which nothing stands yet. @returns their keys */
export async function insertNew(
  asking: Asking,
  siteId: string,
  readings: readonly NewReading[],
  storing: Storing,
): Promise<Set<string>> {
  const revised = readings.map((reading) => ({ ...reading, revision: 0 }));
  const rows = await asking(INSERT_NEW, valuesOf(siteId, revised, storing));
  return new Set(rows.map(rowKey));
}

/** Stores revisions. @throws when one of them stands already */
export async function insertRevisions(
  asking: Asking,
  siteId: string,
  revised: readonly Revised[],
  storing: Storing,
): Promise<void> {
  await asking(GIVEN, valuesOf(siteId, revised, storing));
}

/** What stands for these sensors, instants and origins, by key. */
export async function newestOf(
  asking: Asking,
  siteId: string,
  readings: readonly NewReading[],
): Promise<Map<string, KeptValue>> {
  if (readings.length === 0) return new Map();
  const rows = await asking(NEWEST, [siteId, ...keyTexts(readings)]);
  return new Map(
    rows.map((row) => [rowKey(row), { value: Number(row.value), revision: Number(row.revision) }] as const),
  );
}

function rowKey(row: Record<string, unknown>): string {
  return `${String(row.sensor)} ${Number(row.at)} ${Number(row.origin)}`;
}

function keyTexts(readings: readonly NewReading[]): [string, string, string] {
  return [
    arrayText(readings.map(({ sensorId }) => sensorId)),
    arrayText(readings.map(({ at }) => at.getTime())),
    arrayText(readings.map(({ origin }) => originCode(origin))),
  ];
}

function valuesOf(siteId: string, revised: readonly Revised[], { cameBy, receivedAt }: Storing): (string | null)[] {
  return [
    siteId,
    ...keyTexts(revised),
    arrayText(revised.map(({ revision }) => revision)),
    arrayText(revised.map(({ value }) => value)),
    arrayText(revised.map(({ quality }) => qualityCode(quality))),
    arrayText(revised.map(({ reason }) => reason ?? null)),
    arrayText(revised.map(({ flag }) => flag ?? null)),
    cameBy ?? null,
    receivedAt.toISOString(),
  ];
}
