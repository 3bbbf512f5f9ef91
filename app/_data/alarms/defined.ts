import 'server-only';
import type { Facility } from '#core/facility/facility';
import { loadFacility } from '../facility/load-facility';
import type { Transaction } from '../transaction';

/** A thing of a system by what the file calls it. */
interface Keyed {
  id: string;
  /** `system/key`. */
  name: string;
}

/** What is described of a site, with the ids of what alarms are about. */
export interface Defined {
  facility: Facility;
  revision: number;
  systemIds: ReadonlyMap<string, string>;
  /** Ids of alarms by `system/key`. */
  alarmIds: ReadonlyMap<string, string>;
  /** `system/key` of sensors and of derived series by id. */
  sensorNames: ReadonlyMap<string, string>;
  /** Revision by which its derived series were put in order: with another one some may be missing still. */
  settledBy: number;
  /** Ids of people by key. */
  personIds: ReadonlyMap<string, string>;
}

/** Reads what is described of a site, for its alarms. @returns null when the site is gone */
export async function loadDefined(tx: Transaction, siteId: string): Promise<Defined | null> {
  const loaded = await loadFacility(siteId, tx);
  if (!loaded) return null;
  const alarms = await tx.$queryRaw<Keyed[]>`
    SELECT t.id, s.key || '/' || t.key AS name FROM alarm_definition t
      JOIN system s ON s.site_id = t.site_id AND s.id = t.system_id
     WHERE t.site_id = ${siteId}::uuid AND t.retired_at IS NULL`;
  const sensors = await tx.$queryRaw<Keyed[]>`
    SELECT t.id, s.key || '/' || t.key AS name FROM sensor t
      JOIN system s ON s.site_id = t.site_id AND s.id = t.system_id
     WHERE t.site_id = ${siteId}::uuid AND t.retired_at IS NULL
     UNION ALL
    SELECT t.id, s.key || '/' || t.key AS name FROM derived_series t
      JOIN system s ON s.site_id = t.site_id AND s.id = t.system_id
     WHERE t.site_id = ${siteId}::uuid AND t.retired_at IS NULL`;
  const turn = await tx.readingTurn.findUnique({ where: { siteId }, select: { revision: true } });
  const people = await tx.person.findMany({ where: { siteId, retiredAt: null }, select: { id: true, key: true } });
  return {
    ...loaded,
    settledBy: turn?.revision ?? 0,
    personIds: new Map(people.map(({ id, key }) => [key, id])),
    alarmIds: new Map(alarms.map(({ id, name }) => [name, id])),
    sensorNames: new Map(sensors.map(({ id, name }) => [id, name])),
  };
}
