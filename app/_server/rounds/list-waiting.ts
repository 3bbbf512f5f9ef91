import 'server-only';
import { countRound, type RoundCounts } from '#core/rounds/count';
import { standingEntries } from '#core/rounds/entry';
import { checksOf } from '#core/rounds/sheet';
import { listWithEntries } from '#data/rounds/with-entries';
import type { SiteEntry } from '#data/sites';
import { ratesOnAll } from './find-use';

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
  const found = (await listWithEntries(siteId, ids)).map((one) => ({ ...one, checks: checksOf(one.sheet) }));
  const ratesOf = await ratesOnAll(siteId, found);
  return found.map(({ id, checks, entries }) => ({
    round: id,
    ...countRound(checks, entries, ratesOf(checks, standingEntries(entries))),
  }));
}
