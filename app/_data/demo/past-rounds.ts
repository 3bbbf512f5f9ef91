import 'server-only';
import type { EntryValue } from '#core/rounds/entry';
import type { KeptSheet } from '#shape/rounds/sheet';
import type { Transaction } from '../transaction';
import { insertRows } from './insert-rows';

/** A round that was walked, as it is kept. */
export interface PastRoundRow {
  id: string;
  slotId: string;
  name: string;
  dueAt: Date;
  begunAt: Date;
  begunBy: string;
  sheet: KeptSheet;
}

/** What was recorded on one, as it is kept. */
export interface PastEntryRow {
  id: string;
  roundId: string;
  check: string;
  at: Date;
  recordedAt: Date;
  by: string;
  value: EntryValue | null;
  notDone: string | null;
  note: string | null;
  supersedes: string | null;
  reason: string | null;
}

/** Who signed one, or looked at it again. */
export interface PastSignatureRow {
  id: string;
  roundId: string;
  kind: 'signed' | 'second-look';
  at: Date;
  by: string;
}

const ROUND = {
  site_id: 'uuid',
  id: 'uuid',
  slot_id: 'uuid',
  name: 'text',
  due_at: 'timestamptz',
  begun_at: 'timestamptz',
  begun_by: 'text',
  sheet: 'jsonb',
} as const;
const ENTRY = {
  site_id: 'uuid',
  id: 'uuid',
  round_id: 'uuid',
  check_key: 'text',
  at: 'timestamptz',
  recorded_at: 'timestamptz',
  by: 'text',
  value: 'jsonb',
  not_done: 'text',
  note: 'text',
  supersedes: 'uuid',
  reason: 'text',
} as const;
const SIGNATURE = {
  site_id: 'uuid',
  id: 'uuid',
  round_id: 'uuid',
  kind: 'text',
  at: 'timestamptz',
  by: 'text',
} as const;

/** Adds the rounds that a site of the demonstration has behind it. What supersedes comes after what it supersedes. */
export async function addPastRounds(
  tx: Transaction,
  siteId: string,
  rounds: readonly PastRoundRow[],
  entries: readonly PastEntryRow[],
  signatures: readonly PastSignatureRow[],
): Promise<void> {
  const roundRows = rounds.map(({ id, slotId, name, dueAt, begunAt, begunBy, sheet }) => ({
    ...{ site_id: siteId, id, slot_id: slotId, name },
    ...{ due_at: dueAt, begun_at: begunAt, begun_by: begunBy, sheet },
  }));
  const entryRows = entries.map(({ id, roundId, check, at, recordedAt, by, value, notDone, ...rest }) => ({
    ...{ site_id: siteId, id, round_id: roundId, check_key: check, at, recorded_at: recordedAt, by },
    ...{
      value: value ?? undefined,
      not_done: notDone,
      note: rest.note,
      supersedes: rest.supersedes,
      reason: rest.reason,
    },
  }));
  const signed = signatures.map(({ id, roundId, kind, at, by }) => ({
    site_id: siteId,
    id,
    round_id: roundId,
    kind,
    at,
    by,
  }));
  await insertRows(tx, 'round', ROUND, roundRows);
  await insertRows(tx, 'round_entry', ENTRY, entryRows);
  await insertRows(tx, 'round_signature', SIGNATURE, signed);
}
