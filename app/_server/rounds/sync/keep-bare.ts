import 'server-only';
import { SHEET_FORMAT } from '#core/rounds/sheet';
import { appendRecords } from '#data/records/append-records';
import { addRound } from '#data/rounds/round-row';
import { inTransaction } from '#data/transaction';
import type { SentWalk } from '#shape/rounds/sync';
import { now } from '../../clock';
import type { Who } from '../../gate/who';

/** Begins a round without a line, for a walk whose sheet is gone: what was entered brings its lines along. @returns its id */
export async function keepBare(
  who: Who,
  siteId: string,
  { round: id, name, due }: SentWalk,
  at: Date,
): Promise<string> {
  const bare = { slotId: null, sheetId: null, sheetVersion: null };
  const row = { ...bare, id, name, dueAt: new Date(due ?? at), begunAt: at, begunBy: who.id };
  return await inTransaction(async (tx) => {
    const round = await addRound(tx, siteId, { ...row, sheet: { format: SHEET_FORMAT, places: [], sensors: {} } });
    const body = { by: who.id, round: id, due: row.dueAt.toISOString(), besides: true };
    if (round.isNew) await appendRecords(tx, siteId, [{ kind: 'round-begun', body }], now());
    return round.id;
  });
}
