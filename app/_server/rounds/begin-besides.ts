import 'server-only';
import { sheetOf } from '#core/rounds/sheet';
import { type Result, refused } from '#core/result';
import { type BesidesRequest, besidesRequest, type RoundAddress } from '#shape/rounds/requests';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { findStoredSite } from '../reviews/find-stored-site';
import { keepRound } from './keep-round';

export const beginBesidesShape = besidesRequest;

/** Walks a round besides the timetable, on the sheet of one of its slots: after an alarm, or when one was missed. */
export async function beginBesides(
  who: Who,
  { site, slot: key, entry: id }: BesidesRequest,
): Promise<Result<RoundAddress, Refusal>> {
  const found = await findStoredSite(who, 'walk', site);
  if (!found.ok) return found;
  const slot = found.value.stored.facility.rounds.find((one) => one.key === key);
  if (!slot) return refused({ why: 'not-found', what: 'round' });
  const at = now();
  const sheet = sheetOf(found.value.stored.facility, slot, found.value.today);
  const walks = { slot: slot.key, timetable: false };
  return await keepRound(who, found.value, { name: slot.name, sheet, walks, id, dueAt: at, at });
}
