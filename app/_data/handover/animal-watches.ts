import 'server-only';
import { database } from '../client';
import type { Transaction } from '../transaction';

/** Animals that are looked at more closely for a time. */
export interface AnimalWatchRow {
  id: string;
  systemId: string;
  what: string;
  why: string;
  until: Date;
  at: Date;
  by: string;
}

/** Begins a watch. */
export async function addAnimalWatch(tx: Transaction, siteId: string, row: AnimalWatchRow): Promise<void> {
  await tx.animalWatch.create({ data: { siteId, ...row } });
}

/** Ends one. */
export async function endAnimalWatch(
  tx: Transaction,
  siteId: string,
  watchId: string,
  end: { at: Date; by: string; note: string },
): Promise<void> {
  await tx.animalWatchEnd.create({ data: { siteId, watchId, ...end } });
}

/** One by its id, with whether it has ended. */
export async function findAnimalWatch(
  tx: Transaction,
  siteId: string,
  id: string,
): Promise<(AnimalWatchRow & { endedBy: string | null }) | null> {
  const row = await tx.animalWatch.findUnique({ where: { siteId_id: { siteId, id } }, include: { end: true } });
  if (!row) return null;
  const { siteId: _, end, ...rest } = row;
  return { ...rest, endedBy: end?.by ?? null };
}

/** Those that nobody has ended, what is due first before the rest. One past its time stands until somebody says how it went. */
export async function openAnimalWatches(siteId: string): Promise<AnimalWatchRow[]> {
  const rows = await database().animalWatch.findMany({
    where: { siteId, end: null },
    orderBy: [{ until: 'asc' }, { id: 'asc' }],
  });
  return rows.map(({ siteId: _, ...row }) => row);
}
