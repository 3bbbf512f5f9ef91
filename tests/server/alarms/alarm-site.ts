import type { AlarmDefinition } from '#core/alarms/definition';
import type { Facility } from '#core/facility/facility';
import type { Role, Shift } from '#core/rota/rota';
import { storeReadings } from '#data/readings/store-readings';
import type { Who } from '#server/gate/who';
import { judgeSite } from '#server/alarms/judge-site';
import { alarm } from '../../_support/build-system';
import type { Copy } from '../../_support/database';
import { letIn } from '../../_support/people';
import { smallFacility, smallSystem } from '../../_support/small-facility';
import { keep, stored } from '../../_support/stored';

export const SENSOR = 'display-temperature';
/** A Wednesday, when nobody but who is said is on. */
const START = new Date('2026-03-04T10:00:00Z');

/** Seconds after the start. */
export function after(seconds: number): Date {
  return new Date(START.getTime() + seconds * 1000);
}

/** A shift of every hour of the week. */
export function always(person: string, kind: Shift['kind'] = 'on-call'): Shift {
  return {
    key: `always-${person}`,
    kind,
    people: [person],
    days: ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'],
    from: '00:00',
    to: '00:00',
  };
}

/** Above 26.5 °C at once, answered by the rota. */
export function warm(given: Partial<AlarmDefinition> = {}): AlarmDefinition {
  return {
    ...alarm({ on: { kind: 'sensor', sensor: SENSOR, above: 26.5 }, delayS: 0, safeguard: undefined }),
    ...given,
  };
}

/** One small system with alarms, and shifts. */
export function withAlarms(alarms: AlarmDefinition[], shifts: Shift[] = []): Facility {
  return { ...smallFacility({ ...smallSystem(), alarms }), shifts };
}

/** A described site whose alarms are judged, of a test's database. */
export interface AlarmSite {
  siteId: string;
  siteKey: string;
  /** Stores readings of the one sensor: second, value. They come at a second, or with the last of them. */
  send: (readings: [number, number][], quality?: 'good' | 'suspect' | 'bad', cameS?: number) => Promise<void>;
  /** Judges once, at a second. */
  judge: (atS: number) => Promise<void>;
  member: (name: string, role: Role, person?: string) => Promise<Who>;
  /** Kinds and details of what became of the alarms, oldest first. */
  events: () => Promise<{ kind: string; detail: Record<string, unknown>; occurrence: string; by: string | null }[]>;
  open: () => Promise<{ active: boolean; acknowledged: boolean; step: number; next: Date | null; id: string }[]>;
  /** Who was to be told, by name, and why. */
  calls: () => Promise<{ name: string; why: string; step: number }[]>;
}

export async function alarmSite(query: Copy['query'], facility: Facility): Promise<AlarmSite> {
  await keep(facility);
  const { siteId } = await stored(facility.site.key);
  const { rows } = await query('SELECT id FROM sensor WHERE site_id = $1 AND key = $2 AND retired_at IS NULL', [
    siteId,
    SENSOR,
  ]);
  const sensorId = String(rows[0]?.id);
  return {
    siteId,
    siteKey: facility.site.key,
    send: async (readings, quality = 'good', cameS) => {
      const last = Math.max(...readings.map(([atS]) => atS));
      const reason = quality === 'good' ? {} : { reason: 'jump' };
      const all = readings.map(([atS, value]) => ({
        sensorId,
        at: after(atS),
        value,
        quality,
        ...reason,
        origin: 'device' as const,
      }));
      await storeReadings(siteId, all, { receivedAt: after(cameS ?? last) });
    },
    judge: async (atS) => {
      await judgeSite(siteId, after(atS));
    },
    member: async (name, role, person) => {
      const who = await letIn(query, siteId, facility.site.key, name, role);
      if (person !== undefined)
        await query(
          `UPDATE membership SET person_id = (SELECT id FROM person WHERE site_id = $1 AND key = $2) WHERE site_id = $1 AND account_id = $3`,
          [siteId, person, who.id],
        );
      return who;
    },
    ...asked(query, siteId),
  };
}

/** What became of the alarms of a site. */
function asked(query: Copy['query'], siteId: string): Pick<AlarmSite, 'events' | 'open' | 'calls'> {
  return {
    events: async () =>
      (
        await query(
          'SELECT kind, detail, occurrence_id AS occurrence, by FROM alarm_event WHERE site_id = $1 ORDER BY id',
          [siteId],
        )
      ).rows,
    open: async () =>
      (
        await query(
          'SELECT occurrence_id AS id, active, acknowledged, step, next_step_at AS next FROM alarm_open WHERE site_id = $1 ORDER BY raised_at, occurrence_id',
          [siteId],
        )
      ).rows,
    calls: async () =>
      (
        await query(
          'SELECT a.name, c.why, c.step FROM alarm_call c JOIN account a ON a.id = c.account_id WHERE c.site_id = $1 ORDER BY c.step, a.name',
          [siteId],
        )
      ).rows,
  };
}
