import 'server-only';
import { database } from '../client';
import { MOST_ROWS, type Window } from './window';

/** What became of an alarm. */
export interface AlarmEventRow {
  id: string;
  kind: string;
  at: Date;
  by: string | null;
  from: string | null;
  note: string | null;
}

/** Somebody who was to be told, and what came of it. */
export interface AlarmCallRow {
  id: string;
  step: number;
  accountId: string;
  channel: string;
  why: string;
  madeAt: Date;
  attempts: { id: string; at: Date; result: string; detail: string | null }[];
}

/** One time that an alarm was raised near an incident, with its life. */
export interface NearAlarm {
  id: string;
  beganAt: Date;
  raisedAt: Date;
  value: number | null;
  /** The definition as it was then. */
  definition: unknown;
  alarm: { name: string };
  system: { name: string };
  events: AlarmEventRow[];
  calls: AlarmCallRow[];
}

/** Alarms that were raised, or lived on, within a window, in the order in which they were raised. */
export async function nearAlarms({ siteId, systemId, from, to }: Window): Promise<NearAlarm[]> {
  return await database().alarmOccurrence.findMany({
    where: {
      siteId,
      ...(systemId === null ? {} : { systemId }),
      raisedAt: { lt: to },
      OR: [{ raisedAt: { gte: from } }, { events: { some: { at: { gte: from, lt: to } } } }],
    },
    select: {
      id: true,
      beganAt: true,
      raisedAt: true,
      value: true,
      definition: true,
      alarm: { select: { name: true } },
      system: { select: { name: true } },
      events: { orderBy: { at: 'asc' } },
      calls: { include: { attempts: { orderBy: { at: 'asc' } } }, orderBy: { madeAt: 'asc' } },
    },
    orderBy: { raisedAt: 'asc' },
    take: MOST_ROWS,
  });
}
