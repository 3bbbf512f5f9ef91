import 'server-only';
import { type AlarmState, CALLING_CHANGES } from '#core/alarms/life/machine';
import { type KeptDefinition, keptDefinition } from '#shape/alarms/kept-definition';
import { Prisma } from '../../../prisma/generated/client';
import { database } from '../client';

/** Somebody's word that they saw it. */
export interface Acknowledged {
  at: Date;
  /** Account, or `local`. */
  by: string;
  from: string | null;
  note: string | null;
}

/** One time that an alarm was raised, with what is known of it by now. */
export interface OccurrenceTold {
  id: string;
  alarmId: string;
  site: { id: string; key: string; name: string; zone: string };
  system: { id: string; key: string; name: string };
  /** As it was when it was raised. */
  definition: KeptDefinition;
  beganAt: Date;
  raisedAt: Date;
  value: number | null;
  state: AlarmState;
  /** How often it has called anew since it was raised. */
  again: number;
  /** Why it called last, of one that calls anew: the kind of the event and what it said. */
  calledBy: { kind: 'raised' | 'raised-again' | 'recalled' | 'unsuppressed'; detail: Record<string, unknown> };
  /** The time of another alarm that explains it: its first cause. */
  causeId: string | null;
  /** When it returned to normal or was ended; null while it is active. */
  returnedAt: Date | null;
  /** Why it ended without having returned to normal. */
  endedBy: 'definition-changed' | 'retired' | null;
  /** Since it last called. */
  acknowledged: Acknowledged | null;
  /** Whether it is defined no more. */
  isRetired: boolean;
  /** A time it was raised after this one, the newest; null when this is it. */
  newer: string | null;
}

type Row = Omit<OccurrenceTold, 'definition' | 'acknowledged'> & {
  definition: unknown;
  ackAt: Date | null;
  ackBy: string | null;
  ackFrom: string | null;
  ackNote: string | null;
};

/** Most that are listed of what is over. */
const MOST = 500;

/** One time that an alarm of a site was raised; null when there is none. */
export async function findOccurrence(siteId: string, id: string): Promise<OccurrenceTold | null> {
  const [found] = await ask(Prisma.sql`o.site_id = ${siteId}::uuid AND o.id = ${id}::uuid`);
  return found ?? null;
}

/** What of a site still wants something, the newest first. */
export async function listOpenAlarms(siteId: string): Promise<OccurrenceTold[]> {
  return await ask(Prisma.sql`o.site_id = ${siteId}::uuid AND EXISTS (
    SELECT FROM alarm_open w WHERE w.site_id = o.site_id AND w.occurrence_id = o.id)`);
}

/** What was raised at a site and stands under one first cause, the newest first. */
export async function listExplained(siteId: string, causeId: string): Promise<OccurrenceTold[]> {
  return await ask(Prisma.sql`o.site_id = ${siteId}::uuid AND o.cause_id = ${causeId}::uuid`);
}

/** What was raised at a site since an instant and wants nothing any more, the newest first; 500 at most. */
export async function listOverAlarms(siteId: string, since: Date): Promise<OccurrenceTold[]> {
  return await ask(Prisma.sql`o.site_id = ${siteId}::uuid AND o.raised_at >= ${since.toISOString()}::timestamptz
    AND NOT EXISTS (SELECT FROM alarm_open w WHERE w.site_id = o.site_id AND w.occurrence_id = o.id)`);
}

/** How many alarms of a site want something. */
export async function countOpenAlarms(siteId: string): Promise<number> {
  return await database().alarmOpen.count({ where: { siteId } });
}

async function ask(which: Prisma.Sql): Promise<OccurrenceTold[]> {
  const rows = await database().$queryRaw<Row[]>`
    SELECT o.id, o.alarm_id AS "alarmId", o.began_at AS "beganAt", o.raised_at AS "raisedAt", o.value, o.definition,
           jsonb_build_object('id', t.id, 'key', t.key, 'name', t.name, 'zone', t.zone) AS site,
           jsonb_build_object('id', s.id, 'key', s.key, 'name', s.name) AS system,
           d.retired_at IS NOT NULL AS "isRetired", o.cause_id AS "causeId", x.state, c.again,
           jsonb_build_object('kind', c.kind, 'detail', c.detail) AS "calledBy",
           r.at AS "returnedAt", r.detail->>'why' AS "endedBy",
           k.at AS "ackAt", k.by AS "ackBy", k."from" AS "ackFrom", k.note AS "ackNote",
           (SELECT n.id FROM alarm_occurrence n WHERE n.site_id = o.site_id AND n.alarm_id = o.alarm_id AND n.id > o.id
             ORDER BY n.id DESC LIMIT 1) AS newer
      FROM alarm_occurrence o
      JOIN site t ON t.id = o.site_id
      JOIN system s ON s.site_id = o.site_id AND s.id = o.system_id
      JOIN alarm_definition d ON d.site_id = o.site_id AND d.id = o.alarm_id
      JOIN LATERAL (SELECT e.state FROM alarm_event e WHERE e.site_id = o.site_id AND e.occurrence_id = o.id
                     ORDER BY e.seq DESC LIMIT 1) x ON true
      JOIN LATERAL (SELECT e.seq, e.kind, e.detail, (count(*) OVER () - 1)::int AS again FROM alarm_event e
                     WHERE e.site_id = o.site_id AND e.occurrence_id = o.id AND e.kind = ANY(${[...CALLING_CHANGES]}::text[])
                     ORDER BY e.seq DESC LIMIT 1) c ON true
      LEFT JOIN LATERAL (SELECT e.kind, e.at, e.detail FROM alarm_event e
                          WHERE e.site_id = o.site_id AND e.occurrence_id = o.id AND e.kind IN ('returned', 'raised-again')
                          ORDER BY e.seq DESC LIMIT 1) r ON r.kind = 'returned'
      LEFT JOIN LATERAL (SELECT e.at, e.by, e."from", e.note FROM alarm_event e
                          WHERE e.site_id = o.site_id AND e.occurrence_id = o.id AND e.kind = 'acknowledged' AND e.seq > c.seq
                          ORDER BY e.seq DESC LIMIT 1) k ON true
     WHERE ${which} ORDER BY o.raised_at DESC, o.id DESC LIMIT ${MOST}`;
  return rows.map(({ definition, ackAt, ackBy, ackFrom, ackNote, ...row }) => ({
    ...row,
    definition: keptDefinition.parse(definition),
    acknowledged: ackAt && ackBy !== null ? { at: ackAt, by: ackBy, from: ackFrom, note: ackNote } : null,
  }));
}
