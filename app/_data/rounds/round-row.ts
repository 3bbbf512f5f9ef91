import 'server-only';
import { type KeptSheet, keptSheet } from '#shape/rounds/sheet';
import type { Prisma } from '../../../prisma/generated/client';
import { database } from '../client';
import type { Transaction } from '../transaction';

/** A round with its sheet. */
export interface KeptRound {
  id: string;
  /** Id of its slot; null for one walked besides the timetable. */
  slotId: string | null;
  /** Id and version of the kept sheet that it walks; null for one of the timetable or besides. */
  sheetId: string | null;
  sheetVersion: number | null;
  name: string;
  dueAt: Date;
  begunAt: Date;
  begunBy: string;
  sheet: KeptSheet;
}

/** The round with this id; null when the site has none. @throws ZodError when its sheet is no valid one any more */
export async function findRound(
  siteId: string,
  id: string,
  asker: Pick<Transaction, 'round'> = database(),
): Promise<KeptRound | null> {
  const row = await asker.round.findUnique({ where: { siteId_id: { siteId, id } } });
  return row && { ...row, sheet: keptSheet.parse(row.sheet) };
}

/**
 * Begins a round, or finds the one that somebody else began just before: each walk of the timetable is one round.
 *
 * @returns   its id, and whether it was begun now
 */
export async function addRound(
  tx: Transaction,
  siteId: string,
  { sheet, ...row }: KeptRound,
): Promise<{ id: string; isNew: boolean }> {
  const { id, slotId, sheetId, dueAt } = row;
  const data = { siteId, ...row, sheet: sheet as unknown as Prisma.InputJsonObject };
  const { count } = await tx.round.createMany({ data: [data], skipDuplicates: true });
  if (count > 0) return { id, isNew: true };
  const where =
    slotId !== null ? { siteId, slotId, dueAt } : sheetId !== null ? { siteId, sheetId, dueAt } : { siteId, id };
  const there = await tx.round.findFirst({ where, select: { id: true } });
  if (!there) throw new Error(`Round ${id} was neither begun nor there`);
  return { id: there.id, isNew: false };
}

/** Id of the living slot with this key; null when there is none. */
export async function findSlotId(tx: Transaction, siteId: string, key: string): Promise<string | null> {
  const row = await tx.roundSlot.findFirst({ where: { siteId, key, retiredAt: null }, select: { id: true } });
  return row?.id ?? null;
}

/** Ids of the living sensors of some systems, by `system/sensor`. @param systems keys of the systems */
export async function sensorIds(
  tx: Transaction,
  siteId: string,
  systems: readonly string[],
): Promise<ReadonlyMap<string, string>> {
  const rows = await tx.sensor.findMany({
    where: { siteId, retiredAt: null, system: { retiredAt: null, key: { in: [...systems] } } },
    select: { id: true, key: true, system: { select: { key: true } } },
  });
  return new Map(rows.map(({ id, key, system }) => [`${system.key}/${key}`, id]));
}
