import 'server-only';
import type { Transaction } from '../transaction';
import { insertRows } from './insert-rows';

/** One time that an alarm was raised, as it is kept. */
export interface PastOccurrenceRow {
  id: string;
  alarmId: string;
  systemId: string;
  beganAt: Date;
  raisedAt: Date;
  value: number | null;
  definition: Record<string, unknown>;
}

/** What became of it, as it is kept. */
export interface PastEventRow {
  id: string;
  occurrenceId: string;
  kind: 'raised' | 'returned' | 'acknowledged' | 'escalated';
  at: Date;
  by: string | null;
  from: string | null;
  note: string | null;
  detail: Record<string, unknown>;
}

/** Somebody who was told of it, and when the mail server took it. */
export interface PastCallRow {
  id: string;
  occurrenceId: string;
  step: number;
  accountId: string;
  why: string;
  madeAt: Date;
  tryId: string;
  takenAt: Date;
}

const AT = 'timestamptz';
const OCCURRENCE = {
  site_id: 'uuid',
  id: 'uuid',
  alarm_id: 'uuid',
  system_id: 'uuid',
  began_at: AT,
  raised_at: AT,
  value: 'float8',
  definition: 'jsonb',
} as const;
const EVENT = {
  site_id: 'uuid',
  id: 'uuid',
  occurrence_id: 'uuid',
  kind: 'text',
  at: AT,
  by: 'text',
  from: 'text',
  note: 'text',
  detail: 'jsonb',
} as const;
const CALL = {
  site_id: 'uuid',
  id: 'uuid',
  occurrence_id: 'uuid',
  step: 'int',
  account_id: 'uuid',
  channel: 'text',
  why: 'text',
  made_at: AT,
} as const;
const TRY = { site_id: 'uuid', id: 'uuid', call_id: 'uuid', at: AT, result: 'text' } as const;

/** Adds the alarms that a site of the demonstration has behind it. */
export async function addPastAlarms(
  tx: Transaction,
  siteId: string,
  occurrences: readonly PastOccurrenceRow[],
  events: readonly PastEventRow[],
  calls: readonly PastCallRow[],
): Promise<void> {
  const raised = occurrences.map(({ id, alarmId, systemId, beganAt, raisedAt, value, definition }) => ({
    ...{ site_id: siteId, id, alarm_id: alarmId, system_id: systemId, began_at: beganAt, raised_at: raisedAt },
    ...{ value, definition },
  }));
  const became = events.map(({ occurrenceId, ...event }) => ({
    site_id: siteId,
    occurrence_id: occurrenceId,
    ...event,
  }));
  const told = calls.map(({ id, occurrenceId, step, accountId, why, madeAt }) => ({
    ...{ site_id: siteId, id, occurrence_id: occurrenceId, step, account_id: accountId },
    ...{ channel: 'mail', why, made_at: madeAt },
  }));
  const tries = calls.map(({ id, tryId, takenAt }) => ({
    ...{ site_id: siteId, id: tryId, call_id: id, at: takenAt, result: 'taken' },
  }));
  await insertRows(tx, 'alarm_occurrence', OCCURRENCE, raised);
  await insertRows(tx, 'alarm_event', EVENT, became);
  await insertRows(tx, 'alarm_call', CALL, told);
  await insertRows(tx, 'alarm_call_try', TRY, tries);
}
