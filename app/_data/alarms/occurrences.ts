import 'server-only';
import { isOpen, type Known } from '#core/alarms/known';
import type { AlarmChange } from '#core/alarms/life/machine';
import type { KeptDefinition } from '#shape/alarms/kept-definition';
import type { Prisma } from '../../../prisma/generated/client';
import { newId } from '../new-id';
import type { Transaction } from '../transaction';

/** One time that an alarm was raised. */
export interface NewOccurrence {
  id: string;
  alarmId: string;
  systemId: string;
  /** Since when what it watches held. */
  beganAt: Date;
  raisedAt: Date;
  value: number | null;
  definition: KeptDefinition;
  /** The time another alarm was raised that explains it; null: none does. */
  causeId: string | null;
}

/**
 * What can become of it: a change of its state, or what is said of it. `unfolded`: it calls by itself now, since the alarm it
 * was folded under no longer does.
 */
export type EventKind = AlarmChange | 'acknowledged-too' | 'noted' | 'escalated' | 'reset-refused' | 'unfolded';

/** Something that became of it. */
export interface NewEvent {
  occurrenceId: string;
  kind: EventKind;
  at: Date;
  /** Account, or `local`; left out for what Holdfast did by itself. */
  by?: string;
  from?: string;
  note?: string;
  detail?: Record<string, unknown>;
}

/** Adds times that alarms were raised. */
export async function addOccurrences(tx: Transaction, siteId: string, all: readonly NewOccurrence[]): Promise<void> {
  if (all.length === 0) return;
  const data = all.map((one) => ({ siteId, ...one, definition: one.definition as unknown as Prisma.InputJsonObject }));
  await tx.alarmOccurrence.createMany({ data });
}

/** Adds what became of alarms, in the order given. */
export async function addEvents(tx: Transaction, siteId: string, events: readonly NewEvent[]): Promise<void> {
  if (events.length === 0) return;
  const data = events.map(({ detail = {}, ...event }) => ({
    siteId,
    id: newId(),
    ...event,
    detail: detail as Prisma.InputJsonObject,
  }));
  await tx.alarmEvent.createMany({ data });
}

/** An occurrence that still wants something. */
export interface OpenRow extends Known {
  occurrenceId: string;
  alarmId: string;
  systemId: string;
  raisedAt: Date;
  step: number;
  nextStepAt: Date | null;
  /** The time of another alarm that it is folded under, and leaves the calling to. */
  causeId: string | null;
  /** How often it has called anew since it was raised. */
  again: number;
  /** Once acknowledged: by when its value should have turned; null: no clock runs. And what it was then. */
  turnBy: Date | null;
  valueThen: number | null;
}

/** What calls nobody yet and has no clock. */
export const UNTOLD = { step: 0, nextStepAt: null, causeId: null, again: 0, turnBy: null, valueThen: null } as const;

/**
 * What of a site still wants something, held until the transaction ends: whoever acknowledges and whoever judges change it
 * one after the other.
 *
 * @param occurrenceId   one alone; all when left out
 */
export async function holdOpen(tx: Transaction, siteId: string, occurrenceId?: string): Promise<Map<string, OpenRow>> {
  const rows = await tx.$queryRaw<OpenRow[]>`
    SELECT occurrence_id AS "occurrenceId", alarm_id AS "alarmId", system_id AS "systemId", raised_at AS "raisedAt",
           active, acknowledged, latched, suppressed, step, next_step_at AS "nextStepAt", cause_id AS "causeId", again,
           turn_by AS "turnBy", value_then AS "valueThen"
      FROM alarm_open WHERE site_id = ${siteId}::uuid
       AND (${occurrenceId ?? null}::uuid IS NULL OR occurrence_id = ${occurrenceId ?? null}::uuid)
     ORDER BY occurrence_id FOR UPDATE`;
  return new Map(rows.map((row) => [row.occurrenceId, row]));
}

/** Keeps what still wants something; what no longer does is taken off the list. */
export async function keepOpen(tx: Transaction, siteId: string, rows: readonly OpenRow[]): Promise<void> {
  const over = rows.filter((row) => !isOpen(row)).map(({ occurrenceId }) => occurrenceId);
  if (over.length > 0)
    await tx.$executeRaw`DELETE FROM alarm_open WHERE site_id = ${siteId}::uuid AND occurrence_id = ANY(${over}::uuid[])`;
  const open = rows.filter(isOpen).map((row) => ({
    occurrence_id: row.occurrenceId,
    alarm_id: row.alarmId,
    system_id: row.systemId,
    raised_at: row.raisedAt,
    active: row.active,
    acknowledged: row.acknowledged,
    latched: row.latched,
    suppressed: row.suppressed,
    step: row.step,
    next_step_at: row.nextStepAt,
    cause_id: row.causeId,
    again: row.again,
    turn_by: row.turnBy,
    value_then: row.valueThen,
  }));
  if (open.length === 0) return;
  await tx.$executeRaw`
    INSERT INTO alarm_open SELECT r.* FROM jsonb_populate_recordset(NULL::alarm_open, ${JSON.stringify(open.map((row) => ({ site_id: siteId, ...row })))}::jsonb) AS r
        ON CONFLICT (site_id, occurrence_id) DO UPDATE SET active = excluded.active, acknowledged = excluded.acknowledged,
           latched = excluded.latched, suppressed = excluded.suppressed, step = excluded.step,
           next_step_at = excluded.next_step_at, cause_id = excluded.cause_id, again = excluded.again,
           turn_by = excluded.turn_by, value_then = excluded.value_then`;
}
