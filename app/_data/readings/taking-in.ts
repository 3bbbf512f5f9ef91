import 'server-only';
import { pool } from '../pool';
import { KEPT_FROM } from './retire';
import { aliasesOf, type SensorPlace, sensorsAt } from './sensor-names';

/** By what of a site is told whether anything of what taking in readings needs has changed. */
export interface SiteSigns {
  /** Another one with every change of the description, and of what sources call its sensors. */
  print: string;
  /** The first instant of which all readings are kept; null: nothing was retired yet. */
  keptFrom: Date | null;
}

/** What has to be known to take in readings of a site. */
interface TakingIn {
  /** By each name a source may use: `system/sensor` in keys, and whatever somebody said a source calls it. */
  byName: ReadonlyMap<string, SensorPlace>;
  /** The first instant of which all readings are kept: what is older is taken in no more; null: nothing was retired yet. */
  keptFrom: Date | null;
}

/** The signs of the site `s` as columns: asking for them is a hundredth of asking for the names. */
export const SIGNS = `
  s.revision || ' ' || coalesce((SELECT md5(string_agg(a.name || ' ' || a.sensor_id, ',' ORDER BY a.name))
                                   FROM sensor_alias a WHERE a.site_id = s.id), '') AS print, ${KEPT_FROM} AS "keptFrom"`;

/** Sites whose names are kept in memory, with what told them apart from what they were before. */
const MOST_SITES = 100;
const kept = new Map<string, { print: string; named: ReadonlyMap<string, SensorPlace> }>();

/**
 * Which sensor is meant by each name, and from when on readings are taken. Names are read anew only when some have changed.
 *
 * @param signs   of the site, by whoever has asked for them already
 */
export async function takingIn(siteId: string, signs?: SiteSigns): Promise<TakingIn> {
  const { print, keptFrom } = signs ?? (await signsOf(siteId));
  return { byName: await namesOf(siteId, print), keptFrom };
}

/** Which sensor is meant by each name. */
export async function sensorsByName(siteId: string): Promise<ReadonlyMap<string, SensorPlace>> {
  return (await takingIn(siteId)).byName;
}

async function signsOf(siteId: string): Promise<SiteSigns> {
  const { rows } = await pool().query<SiteSigns>({
    name: 'site-signs',
    text: `SELECT ${SIGNS} FROM site s WHERE s.id = $1`,
    values: [siteId],
  });
  return rows[0] ?? { print: '', keptFrom: null };
}

async function namesOf(siteId: string, print: string): Promise<ReadonlyMap<string, SensorPlace>> {
  const known = kept.get(siteId);
  if (known?.print === print) return known.named;
  const named = await readNames(siteId);
  kept.delete(siteId);
  kept.set(siteId, { print, named });
  for (const oldest of kept.keys()) if (kept.size > MOST_SITES) kept.delete(oldest);
  return named;
}

async function readNames(siteId: string): Promise<Map<string, SensorPlace>> {
  const [sensors, aliases] = await Promise.all([sensorsAt(siteId), aliasesOf(siteId)]);
  const byId = new Map(sensors.map((sensor) => [sensor.id, sensor] as const));
  const named = new Map<string, SensorPlace>();
  for (const { name, sensorId } of aliases) {
    const sensor = byId.get(sensorId);
    if (sensor) named.set(name, sensor);
  }
  for (const sensor of sensors) named.set(`${sensor.system}/${sensor.key}`, sensor);
  return named;
}
