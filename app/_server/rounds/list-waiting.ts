import 'server-only';
import { countRound, type RoundCounts } from '#core/rounds/count';
import { checksOf } from '#core/rounds/sheet';
import { listWithEntries } from '#data/rounds/with-entries';
import type { SiteEntry } from '#data/sites';

/** A round that was signed and that nobody has looked at again. */
export interface Waiting extends RoundCounts {
  round: string;
}

/** Which of some rounds wait for a second look, with what there is to look at. */
export async function listWaiting(
  { id: siteId }: Pick<SiteEntry, 'id'>,
  rounds: readonly { id: string; signed: object | null; secondLook: object | null }[],
): Promise<Waiting[]> {
  const ids = rounds.filter(({ signed, secondLook }) => signed && !secondLook).map(({ id }) => id);
  if (ids.length === 0) return [];
  const found = await listWithEntries(siteId, ids);
  return found.map(({ id, sheet, entries }) => ({ round: id, ...countRound(checksOf(sheet), entries) }));
}
