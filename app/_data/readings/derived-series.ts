import 'server-only';
import { pool } from '../pool';
import { newId } from '../new-id';
import { arrayText, type Asking } from './asking';

/** A derived series that is there, and of which system. */
export interface DerivedRow {
  id: string;
  systemId: string;
  key: string;
}

const LIVING = `
  SELECT id, system_id AS "systemId", key FROM derived_series WHERE site_id = $1::uuid AND retired_at IS NULL ORDER BY id`;

/** The derived series of a site. */
export async function derivedRows(asking: Asking, siteId: string): Promise<DerivedRow[]> {
  return (await asking(LIVING, [siteId])) as unknown as DerivedRow[];
}

/** The derived series of a site with the keys of their systems and the revision of the site. */
export async function livingDerived(siteId: string): Promise<(DerivedRow & { system: string; revision: number })[]> {
  const { rows } = await pool().query<DerivedRow & { system: string; revision: number }>(
    `SELECT d.id, d.system_id AS "systemId", d.key, y.key AS system, s.revision FROM derived_series d
       JOIN system y ON y.site_id = d.site_id AND y.id = d.system_id JOIN site s ON s.id = d.site_id
      WHERE d.site_id = $1 AND d.retired_at IS NULL ORDER BY d.id`,
    [siteId],
  );
  return rows;
}

/** Id of a derived series of a system by its key; null when there is none. */
export async function findDerived(siteId: string, systemId: string, key: string): Promise<string | null> {
  const { rows } = await pool().query<{ id: string }>(
    'SELECT id FROM derived_series WHERE site_id = $1 AND system_id = $2 AND key = $3 AND retired_at IS NULL',
    [siteId, systemId, key],
  );
  return rows[0]?.id ?? null;
}

/** Makes those that are wanted and not there, and retires those that are there and not wanted. @returns the new ones */
export async function keepDerived(
  asking: Asking,
  siteId: string,
  wanted: readonly { systemId: string; key: string }[],
  at: Date,
): Promise<DerivedRow[]> {
  const there = await derivedRows(asking, siteId);
  const nameOf = ({ systemId, key }: { systemId: string; key: string }) => `${systemId} ${key}`;
  const [known, named] = [new Set(there.map(nameOf)), new Set(wanted.map(nameOf))];
  const made = wanted.filter((one) => !known.has(nameOf(one))).map((one) => ({ ...one, id: newId() }));
  const gone = there.filter((one) => !named.has(nameOf(one)));
  if (gone.length > 0)
    await asking(
      'UPDATE derived_series SET retired_at = $3::timestamptz WHERE site_id = $1::uuid AND id = ANY($2::uuid[])',
      [siteId, arrayText(gone.map(({ id }) => id)), at.toISOString()],
    );
  if (made.length > 0)
    await asking(
      `INSERT INTO derived_series (site_id, id, system_id, key, made_at)
       SELECT $1::uuid, u.*, $5::timestamptz FROM unnest($2::uuid[], $3::uuid[], $4::text[]) AS u`,
      [
        siteId,
        arrayText(made.map(({ id }) => id)),
        arrayText(made.map(({ systemId }) => systemId)),
        arrayText(made.map(({ key }) => key)),
        at.toISOString(),
      ],
    );
  return made;
}

/** First and last day of the readings of sensors since some instant, ms since 1970. */
export async function daysRead(
  asking: Asking,
  siteId: string,
  sensorIds: readonly string[],
  since: Date,
): Promise<{ sensorId: string; fromMs: number; toMs: number }[]> {
  const rows = await asking(
    `SELECT sensor_id AS "sensorId", (extract(epoch FROM min("at")) * 1000)::float8 AS "fromMs",
            (extract(epoch FROM max("at")) * 1000)::float8 AS "toMs"
       FROM reading WHERE site_id = $1::uuid AND sensor_id = ANY($2::uuid[]) AND "at" >= $3::timestamptz
      GROUP BY sensor_id, date_trunc('day', "at") ORDER BY 1, 2`,
    [siteId, arrayText([...sensorIds]), since.toISOString()],
  );
  return rows as unknown as { sensorId: string; fromMs: number; toMs: number }[];
}
