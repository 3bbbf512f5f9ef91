import 'server-only';
import { database } from '../client';
import { type TakenBack, takenBack } from '../taken-back';
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

/** A watch that somebody ended, and whether they took that back. */
export interface EndedWatchRow {
  id: string;
  what: string;
  end: { at: Date; by: string; note: string };
  taken: TakenBack | null;
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

/** Those that were ended since an instant, the latest first. */
export async function endedAnimalWatches(siteId: string, since: Date): Promise<EndedWatchRow[]> {
  const rows = await database().animalWatchEnd.findMany({
    where: { siteId, at: { gte: since } },
    include: { watch: { select: { what: true } } },
    orderBy: [{ at: 'desc' }, { watchId: 'desc' }],
  });
  const taken = await takenBack(
    siteId,
    'animal-watch-end',
    rows.map(({ watchId }) => watchId),
  );
  return rows.map(({ watchId: id, at, by, note, watch: { what } }) => ({
    ...{ id, what, end: { at, by, note } },
    taken: taken.get(id) ?? null,
  }));
}
