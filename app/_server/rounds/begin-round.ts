import 'server-only';
import { standing, walksDue } from '#core/rounds/due';
import { sheetOf } from '#core/rounds/sheet';
import { type Result, refused } from '#core/result';
import { addDays } from '#core/time/add-days';
import { newId } from '#data/new-id';
import { type BeginRequest, beginRequest, type RoundAddress } from '#shape/rounds/requests';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { dayIn } from '../local-day';
import { findStoredSite } from '../reviews/find-stored-site';
import { beginSheet } from './begin-sheet';
import { keepRound } from './keep-round';

export const beginRoundShape = beginRequest;

/**
 * Begins a round of the timetable, or of a kept sheet, that is due or late. Two who begin at once walk the same one.
 *
 * @returns   where it is
 */
export async function beginRound(
  who: Who,
  { site, slot: key, sheet, due }: BeginRequest,
): Promise<Result<RoundAddress, Refusal>> {
  const found = await findStoredSite(who, 'walk', site);
  if (!found.ok) return found;
  if (sheet !== undefined) return await beginSheet(who, found.value, { sheet, due });
  const { entry, stored } = found.value;
  const dueAt = new Date(due);
  const at = now();
  const { rounds, shifts } = stored.facility;
  const day = dayIn(entry.zone, dueAt);
  const walk = walksDue(rounds, entry.zone, day, addDays(day, 1), shifts).find(
    (one) => one.slot.key === key && one.dueAt === dueAt.getTime(),
  );
  if (!walk) return refused({ why: 'not-found', what: 'round' });
  const stands = standing(walk, null, null, at.getTime());
  if (stands === 'ahead') return refused({ why: 'conflict', now: `${walk.slot.name} cannot be begun yet.` });
  if (stands === 'missed')
    return refused({
      why: 'conflict',
      now: `${walk.slot.name} was missed: the next round that looks at the same may be begun. Walk that, or one besides the timetable.`,
    });
  const walked = sheetOf(stored.facility, walk.slot, day);
  const walks = { slot: walk.slot.key, timetable: true };
  return await keepRound(who, found.value, { name: walk.slot.name, sheet: walked, walks, id: newId(), dueAt, at });
}
