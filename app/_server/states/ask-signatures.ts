import 'server-only';
import type { SignedByTwo } from '#core/states/signing';
import { newId } from '#data/new-id';
import type { RecordEntry } from '#data/records/seal';
import { askSignature, countSigners } from '#data/states/signatures';
import type { Transaction } from '#data/transaction';

/** What somebody did that a second person has to look at. */
export interface Doing {
  systemId: string | null;
  /** The event of a state, or the safeguard. */
  about: string;
  at: Date;
  by: string;
  note: string | null;
}

/**
 * Asks for second signatures. Where there is nobody else at the site who could give one, none is asked for: a list that can
 * never be worked off is one that nobody reads.
 *
 * @returns   what the record gains
 */
export async function askSignatures(
  tx: Transaction,
  siteId: string,
  kinds: readonly SignedByTwo[],
  doing: Doing,
): Promise<RecordEntry[]> {
  if (kinds.length === 0 || (await countSigners(tx, siteId, doing.by)) === 0) return [];
  const entries: RecordEntry[] = [];
  const { systemId, about, at, by, note } = doing;
  for (const kind of kinds) {
    const id = newId();
    await askSignature(tx, siteId, { id, kind, systemId, about, at, by, note });
    entries.push({
      kind: 'second-asked',
      body: { by, what: kind, asked: id, about, ...(systemId && { system: systemId }) },
    });
  }
  return entries;
}
