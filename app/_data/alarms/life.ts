import 'server-only';
import type { Channel } from '#core/alarms/channels';
import type { Attempt } from '#core/alarms/told';
import type { ToTell } from '#core/alarms/to-tell';
import { database } from '../client';
import type { EventKind } from './occurrences';

/** Something that became of an alarm. */
export interface LifeEvent {
  kind: EventKind;
  at: Date;
  by: string | null;
  from: string | null;
  note: string | null;
  detail: Record<string, unknown>;
}

/** Everything that became of one time that an alarm was raised, in order. */
export async function eventsOf(siteId: string, occurrenceId: string): Promise<LifeEvent[]> {
  const rows = await database().alarmEvent.findMany({
    where: { siteId, occurrenceId },
    orderBy: { seq: 'asc' },
  });
  return rows.map(({ kind, at, by, from, note, detail }) => ({
    kind: kind as EventKind,
    at,
    by,
    from,
    note,
    detail: detail as Record<string, unknown>,
  }));
}

/** Somebody who was to be told, and the attempts to do it. */
export interface CallTold {
  occurrenceId: string;
  /** How often the alarm had called anew by then. */
  again: number;
  step: number;
  accountId: string;
  channel: Channel;
  why: ToTell['why'];
  madeAt: Date;
  attempts: (Attempt & { detail: string | null })[];
}

/** Who was to be told of some alarms, in the order in which they were. */
export async function callsOf(siteId: string, occurrenceIds: readonly string[]): Promise<CallTold[]> {
  if (occurrenceIds.length === 0) return [];
  const rows = await database().alarmCall.findMany({
    where: { siteId, occurrenceId: { in: [...occurrenceIds] } },
    include: { attempts: { orderBy: [{ at: 'asc' }, { id: 'asc' }] } },
    orderBy: [{ madeAt: 'asc' }, { id: 'asc' }],
  });
  return rows.map(({ occurrenceId, again, step, accountId, channel, why, madeAt, attempts }) => ({
    occurrenceId: occurrenceId ?? '',
    again,
    step,
    accountId,
    channel: channel as Channel,
    why: why as ToTell['why'],
    madeAt,
    attempts: attempts.map(({ at, result, detail }) => ({
      atMs: at.getTime(),
      result: result as Attempt['result'],
      detail,
    })),
  }));
}
