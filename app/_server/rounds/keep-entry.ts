import 'server-only';
import type { Check } from '#core/rounds/check';
import type { Entry, EntryValue, Measured } from '#core/rounds/entry';
import { ok, type Result, refused } from '#core/result';
import { storeReadingsIn } from '#data/readings/store-readings';
import type { RecordEntry } from '#data/records/seal';
import { addEntries, isEntryElsewhere } from '#data/rounds/entries';
import type { EnterRequest } from '#shape/rounds/requests';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { askForReviews } from '../reviews/ask-for-reviews';
import type { HeldRound } from './change-round';

/** What is to be kept of a line. */
export interface ToKeep {
  typed: Pick<EnterRequest, 'entry' | 'note' | 'notDone' | 'supersedes' | 'reason'>;
  check: Check;
  value: EntryValue | null;
}

/**
 * Keeps an entry, and the reading that it is. What was sent twice is kept once; of two who enter the same line the second is
 * told, and may correct.
 */
export async function keepEntry(
  held: HeldRound,
  who: Who,
  { typed, check, value }: ToKeep,
): Promise<Result<RecordEntry[], Refusal>> {
  const { tx, site, round, entries, standing, signatures, at } = held;
  if (entries.some(({ id }) => id === typed.entry)) return ok([]);
  if (await isEntryElsewhere(tx, site.id, typed.entry))
    return refused({ why: 'conflict', now: 'This was sent for another round already.' });
  const stands = standing.get(check.key);
  const clash = clashOf(held, stands, typed.supersedes);
  if (clash) return clash;
  // A correction is of what was looked at then.
  const atMs = stands?.value ? stands.atMs : at.getTime();
  const { entry: id, note = null, notDone = null, supersedes = null, reason = null } = typed;
  const entry: Entry = { id, check: check.key, atMs, by: who.id, value, notDone, note, supersedes, reason };
  await addEntries(tx, site.id, round.id, [{ ...entry, recordedAt: at }]);
  await keepReading(held, check, entry);
  if (check.kind === 'calibration' && signatures.length > 0) await askForReviews(tx, site, at);
  if (supersedes === null) return ok([]);
  const body = { by: who.id, round: round.id, slot: round.slotId, line: check.key, entry: id, supersedes, reason };
  return ok([{ kind: 'round-corrected', body }]);
}

/** Why an entry is not kept as things stand; null when nothing is in its way. */
function clashOf(
  { signatures }: HeldRound,
  stands: Entry | undefined,
  supersedes: string | undefined,
): Result<never, Refusal> | null {
  const conflict = (now: string) => refused({ why: 'conflict' as const, now });
  if (supersedes !== undefined)
    return stands?.id === supersedes ? null : conflict('Somebody has corrected this entry already.');
  if (signatures.length > 0)
    return conflict('This round is signed: what stands on it can be corrected, with a reason.');
  return stands
    ? conflict('Somebody has entered this line meanwhile: see what they wrote, and correct it if yours is right.')
    : null;
}

/**
 * Keeps what an entry says of sensors as their readings.
 *
 * @param isOfPast   whether it is told for the record alone, and no alarm is held to it
 */
export async function keepReading(
  { tx, site, round, at }: HeldRound,
  check: Check,
  entry: Entry,
  isOfPast = false,
): Promise<void> {
  const readings = readingsOf(check, entry.value).flatMap(({ sensor, measured: { value, quality, reason } }) => {
    const sensorId = round.sheet.sensors[`${check.about.system}/${sensor}`];
    if (sensorId === undefined) return [];
    return [
      {
        sensorId,
        at: new Date(entry.atMs),
        value,
        quality,
        ...(reason && { reason }),
        origin: 'hand' as const,
        isOfPast,
      },
    ];
  });
  if (readings.length === 0) return;
  await storeReadingsIn(tx, site.id, readings, {
    cameBy: entry.id,
    receivedAt: at,
    correct: entry.supersedes !== null,
  });
}

/** What an entry says of sensors, by the key of each. */
function readingsOf(check: Check, value: EntryValue | null): { sensor: string; measured: Measured }[] {
  if (value?.kind === 'number') return [{ sensor: check.about.key, measured: value }];
  if (value?.kind !== 'water-test' || check.kind !== 'water-test') return [];
  return check.asks.flatMap(({ quantity, sensor }) => {
    const measured = value.figures[quantity];
    return measured && sensor !== null ? [{ sensor, measured }] : [];
  });
}
