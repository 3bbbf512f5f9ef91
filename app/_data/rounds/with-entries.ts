import 'server-only';
import type { Entry } from '#core/rounds/entry';
import { type KeptSheet, keptSheet } from '#shape/rounds/sheet';
import { database } from '../client';
import { BY_TIME, entryOf } from './entries';

/** A round with its sheet and what was recorded on it. */
export interface WithEntries {
  id: string;
  sheet: KeptSheet;
  entries: Entry[];
}

/** Some rounds with what was recorded on them: two questions, however many they are. */
export async function listWithEntries(siteId: string, ids: readonly string[]): Promise<WithEntries[]> {
  const [rounds, rows] = await Promise.all([
    database().round.findMany({ where: { siteId, id: { in: [...ids] } }, select: { id: true, sheet: true } }),
    database().roundEntry.findMany({
      where: { siteId, roundId: { in: [...ids] } },
      orderBy: BY_TIME,
    }),
  ]);
  return rounds.map(({ id, sheet }) => ({
    id,
    sheet: keptSheet.parse(sheet),
    entries: rows.filter(({ roundId }) => roundId === id).map(entryOf),
  }));
}
