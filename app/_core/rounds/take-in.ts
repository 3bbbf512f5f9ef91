import type { Entry } from './entry';

/** Why an entry that was made out of reach is kept beside something, and not simply as it came. */
export type Beside = 'entered' | 'corrected' | 'signed' | 'unknown';

/** What becomes of an entry that comes late. */
export type Taken =
  | { outcome: 'stored'; entry: Entry }
  | { outcome: 'conflict'; entry: Entry; beside: Beside }
  /** It is there already. */
  | { outcome: 'repeat' }
  /** Its id belongs to another entry: it is a fault of whatever made it. */
  | { outcome: 'refused' };

/**
 * What becomes of an entry that was made where there was no signal, now that it comes. Somebody stood there and looked, so it is
 * kept whatever was done meanwhile: beside what another wrote on the same line, under a signature that was given without it, or
 * as an entry of its own where what it corrects never came.
 *
 * @param kept       the entries of the round, in order
 * @param arriving   the entry, its time by the telephone
 * @param isSigned   whether the round is signed already
 */
export function takeIn(kept: readonly Entry[], arriving: Entry, isSigned: boolean): Taken {
  const same = kept.find(({ id }) => id === arriving.id);
  if (same)
    return same.check === arriving.check && same.by === arriving.by ? { outcome: 'repeat' } : { outcome: 'refused' };
  const { supersedes } = arriving;
  if (supersedes !== null) {
    const target = kept.find(({ id }) => id === supersedes);
    if (target?.check !== arriving.check)
      return { outcome: 'conflict', beside: 'unknown', entry: { ...arriving, supersedes: null, ...asNote(arriving) } };
    const entry = { ...arriving, atMs: target.value === null ? arriving.atMs : target.atMs };
    return kept.some((one) => one.supersedes === supersedes)
      ? { outcome: 'conflict', beside: 'corrected', entry }
      : { outcome: 'stored', entry };
  }
  if (isSigned) return { outcome: 'conflict', beside: 'signed', entry: arriving };
  return kept.some(({ check }) => check === arriving.check)
    ? { outcome: 'conflict', beside: 'entered', entry: arriving }
    : { outcome: 'stored', entry: arriving };
}

/** An entry that corrects nothing has no reason; what was said as one stays with it. */
function asNote({ note, reason }: Entry): Pick<Entry, 'note' | 'reason'> {
  return { note: [note, reason].filter((text) => text !== null).join('\n') || null, reason: null };
}
