import 'server-only';
import type { SensorQuantity } from '#core/facility/system';
import { pool } from '../pool';
import type { Transaction } from '../transaction';

/** A living sensor, as readings are sent for it. */
export interface SensorPlace {
  id: string;
  systemId: string;
  quantity: SensorQuantity;
  /** The gateway it hangs on; null: none. */
  gatewayId: string | null;
  /** The tank it sits in, and how far it may be off, in the unit of its quantity; null where that is not known. */
  tankId: string | null;
  accuracy: number | null;
  /** °C that a meter brings its reading to; null: none. */
  compensatedToC: number | null;
}

/** A sensor with the names people know it by. */
export interface NamedSensor extends SensorPlace {
  key: string;
  name: string;
  system: string;
  systemName: string;
}

/** A name that came and that no sensor has. */
export interface UnknownName {
  name: string;
  seenAt: Date;
  unit: string | null;
  value: number | null;
}

/** Names of a site that are remembered as unknown: whoever sends nonsense fills no disk. */
const MOST_UNKNOWN = 500;

const SENSORS = `
  SELECT s.id, s.system_id AS "systemId", s.gateway_id AS "gatewayId", s.quantity, s.key, s.name, y.key AS system,
         y.name AS "systemName", s.tank_id AS "tankId", (s.detail->'accuracy'->>'value')::float8 AS accuracy,
         (s.detail->>'compensatedToC')::float8 AS "compensatedToC"
    FROM sensor s JOIN system y ON y.site_id = s.site_id AND y.id = s.system_id
   WHERE s.site_id = $1 AND s.retired_at IS NULL AND y.retired_at IS NULL
   ORDER BY y.ordinal, y.key, s.ordinal, s.key`;

/** The living sensors of a site, in the order of its description. */
export async function sensorsAt(siteId: string): Promise<NamedSensor[]> {
  return (await pool().query<NamedSensor>(SENSORS, [siteId])).rows;
}

/** Names that sources use for sensors. */
export async function aliasesOf(siteId: string): Promise<{ name: string; sensorId: string }[]> {
  const { rows } = await pool().query<{ name: string; sensorId: string }>(
    'SELECT name, sensor_id AS "sensorId" FROM sensor_alias WHERE site_id = $1 ORDER BY name',
    [siteId],
  );
  return rows;
}

/** Says which sensor a name is of; it is unknown no longer. */
export async function setAlias(tx: Transaction, siteId: string, name: string, sensorId: string): Promise<void> {
  const key = { siteId_name: { siteId, name } };
  await tx.sensorAlias.upsert({ where: key, create: { siteId, name, sensorId }, update: { sensorId } });
  await tx.unknownName.deleteMany({ where: { siteId, name } });
}

/** Takes a name away. @returns the sensor it was of; null when it was of none */
export async function removeAlias(tx: Transaction, siteId: string, name: string): Promise<string | null> {
  const found = await tx.sensorAlias.findUnique({ where: { siteId_name: { siteId, name } } });
  if (found) await tx.sensorAlias.delete({ where: { siteId_name: { siteId, name } } });
  return found?.sensorId ?? null;
}

/** Remembers names that no sensor has, as long as there are not too many of them. */
export async function noteUnknown(
  siteId: string,
  names: readonly Omit<UnknownName, 'seenAt'>[],
  at: Date,
): Promise<void> {
  const columns = [names.map(({ name }) => name), names.map(({ unit }) => unit), names.map(({ value }) => value)];
  await pool().query(
    `INSERT INTO unknown_name AS n (site_id, name, seen_at, unit, value)
     SELECT $1, g.name, $2, g.unit, g.value
       FROM (SELECT u.*, o.name IS NOT NULL AS known, row_number() OVER (PARTITION BY o.name IS NULL ORDER BY u.name) AS nth
               FROM unnest($3::text[], $4::text[], $5::float8[]) AS u(name, unit, value)
               LEFT JOIN unknown_name o ON o.site_id = $1 AND o.name = u.name) g
      WHERE g.known OR g.nth <= $6 - (SELECT count(*) FROM unknown_name o WHERE o.site_id = $1)
      ORDER BY g.name
     ON CONFLICT (site_id, name) DO UPDATE SET seen_at = EXCLUDED.seen_at, unit = EXCLUDED.unit, value = EXCLUDED.value
      WHERE n.seen_at < EXCLUDED.seen_at - interval '1 minute'`,
    [siteId, at, ...columns, MOST_UNKNOWN],
  );
}

/** Names that came and that no sensor has, the latest first. */
export async function unknownNames(siteId: string): Promise<UnknownName[]> {
  const { rows } = await pool().query<UnknownName>(
    `SELECT name, seen_at AS "seenAt", unit, value FROM unknown_name WHERE site_id = $1 ORDER BY seen_at DESC, name`,
    [siteId],
  );
  return rows;
}
