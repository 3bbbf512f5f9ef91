import 'server-only';
import type { Check } from '#core/rounds/check';
import type { Entry } from '#core/rounds/entry';
import type { Beside, Taken } from '#core/rounds/take-in';
import { takeIn } from '#core/rounds/take-in';
import type { RecordEntry } from '#data/records/seal';
import { addEntries, isEntryElsewhere } from '#data/rounds/entries';
import type { Who } from '../../gate/who';
import type { HeldRound } from '../change-round';
import { keepReading } from '../keep-entry';

/** An entry that was made out of reach, ready to be kept. */
export interface LateEntry {
  entry: Entry;
  /** The line it is of: that of the sheet, or as it was. */
  check: Check;
  /** Whether it is no line of the sheet as it is now. */
  isForeign: boolean;
  /** How far the clock of the telephone was off, s; null when it was not. */
  clockOffS: number | null;
}

/** ms after which a reading is told for the record alone: what an alarm would call about now was seen then. */
const OF_PAST_MS = 3_600_000;

/** Keeps an entry that comes late, and the reading that it is. @returns what became of it, and what the record gains */
export async function keepLate(
  held: HeldRound,
  who: Who,
  { entry: arriving, check, isForeign, clockOffS }: LateEntry,
): Promise<{ taken: Taken; records: RecordEntry[] }> {
  const { tx, site, round, entries, signatures, at } = held;
  const taken = takeIn(entries, arriving, signatures.length > 0);
  if (taken.outcome === 'repeat' || taken.outcome === 'refused') return { taken, records: [] };
  if (await isEntryElsewhere(tx, site.id, arriving.id)) return { taken: { outcome: 'refused' }, records: [] };
  const { entry } = taken;
  await addEntries(tx, site.id, round.id, [{ ...entry, recordedAt: at, clockOffS, line: isForeign ? check : null }]);
  if (!isForeign) await keepReading(held, check, entry, at.getTime() - entry.atMs > OF_PAST_MS);
  const body = { by: who.id, round: round.id, slot: round.slotId, line: check.key, entry: entry.id };
  const { supersedes, reason } = entry;
  const records: RecordEntry[] = [];
  if (supersedes !== null) records.push({ kind: 'round-corrected', body: { ...body, supersedes, reason } });
  if (taken.outcome === 'conflict')
    records.push({ kind: 'round-entry-beside', body: { ...body, beside: taken.beside } });
  return { taken, records };
}

/** What the person is told of an entry that is kept beside something. */
export const BESIDE_WORDS: Readonly<Record<Beside, string>> = {
  entered: 'Kept. Somebody else has entered this line as well: both stand on the sheet.',
  corrected: 'Kept. Somebody else has corrected the same entry as well: both stand on the sheet.',
  signed: 'Kept. The round had been signed before this came: it stands beside what was signed.',
  unknown: 'Kept as an entry of its own: what it corrects is not there.',
};
