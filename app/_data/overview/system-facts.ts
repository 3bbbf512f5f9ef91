import 'server-only';
import { DEVICE_FRESH_MS } from '#core/readings/age';
import type { Origin } from '#core/readings/reading';
import { database } from '../client';
import { originOf } from '../readings/codes';

/** Alarms of a system that still want something, and those that call nobody. */
export interface OpenAlarms {
  systemId: string;
  /** Nobody has acknowledged them yet. */
  unacknowledged: number;
  /** Acknowledged, and what they watch is not over or nobody has reset them. */
  active: number;
  /** Alarms that are shelved, suppressed by design or out of service, active or not. */
  suppressed: number;
}

/** Open alarms by system: one question for all sites. */
export async function openAlarms(siteIds: readonly string[]): Promise<OpenAlarms[]> {
  return await database().$queryRaw<OpenAlarms[]>`
    SELECT system_id AS "systemId", sum(unacknowledged)::int AS unacknowledged, sum(active)::int AS active,
           sum(suppressed)::int AS suppressed
      FROM (SELECT system_id, count(*) FILTER (WHERE NOT acknowledged) AS unacknowledged,
                   count(*) FILTER (WHERE acknowledged) AS active, 0 AS suppressed
              FROM alarm_open WHERE site_id = ANY(${[...siteIds]}::uuid[]) AND NOT suppressed GROUP BY system_id
            UNION ALL
            SELECT d.system_id, 0, 0, count(DISTINCT d.id)
              FROM alarm_suppressed w JOIN alarm_definition d ON d.site_id = w.site_id AND d.id = w.alarm_id
             WHERE w.site_id = ANY(${[...siteIds]}::uuid[]) GROUP BY d.system_id) AS counted
     GROUP BY system_id`;
}

/** The newest reading of a system, and how many of its sensors have fallen silent. */
export interface LastRead {
  systemId: string;
  at: Date;
  origin: Origin;
  /** Sensors whose newest reading came from a device, too long ago. */
  silent: number;
  /** Sensors that ever gave one by a device. */
  devices: number;
}

/** The newest reading by system: one question for all sites. @param at   the instant */
export async function lastRead(siteIds: readonly string[], at: Date): Promise<LastRead[]> {
  const fresh = new Date(at.getTime() - DEVICE_FRESH_MS).toISOString();
  const rows = await database().$queryRaw<(Omit<LastRead, 'origin'> & { origin: number })[]>`
    SELECT s.system_id AS "systemId", max(l.at) AS at, (array_agg(l.origin ORDER BY l.at DESC))[1]::int AS origin,
           count(*) FILTER (WHERE l.origin = 1 AND l.at < ${fresh}::timestamptz)::int AS silent,
           count(*) FILTER (WHERE l.origin = 1)::int AS devices
      FROM reading_latest l JOIN sensor s ON s.site_id = l.site_id AND s.id = l.sensor_id AND s.retired_at IS NULL
     WHERE l.site_id = ANY(${[...siteIds]}::uuid[]) GROUP BY s.system_id`;
  return rows.map(({ origin, ...row }) => ({ ...row, origin: originOf(origin) }));
}
