import 'server-only';
import { walksDue } from '#core/rounds/due';
import { sheetOf } from '#core/rounds/sheet';
import { sheetOfSlot } from '#core/rounds/walk-name';
import { ok, type Result } from '#core/result';
import { addDays } from '#core/time/add-days';
import { findRound } from '#data/rounds/round-row';
import { listSheetsInForce } from '#data/rounds/sheet-versions';
import type { SentWalk } from '#shape/rounds/sync';
import type { Refusal } from '../../gate/refusal';
import type { Who } from '../../gate/who';
import { dayIn } from '../../local-day';
import type { SiteToday } from '../../reviews/find-stored-site';
import { type Beginning, keepRound } from '../keep-round';
import { sheetsStanding } from '../sheets/sheets-standing';
import { walkedSheet } from '../sheets/walked-sheet';
import { keepBare } from './keep-bare';

/**
 * The round that a telephone means, begun if nobody has. A walk of the timetable or of a kept sheet that somebody else has begun
 * is theirs as well. One that stands in neither any more is one besides it; where its sheet is gone too it is begun without a
 * line, for what was entered brings its lines along.
 *
 * @param madeAt   when the first thing was entered on it
 * @returns        its id
 */
export async function findWalk(
  who: Who,
  today: SiteToday,
  walk: SentWalk,
  madeAt: Date,
): Promise<Result<string, Refusal>> {
  const { id: siteId } = today.entry;
  if (await findRound(siteId, walk.round)) return ok(walk.round);
  const sheet = sheetOfSlot(walk.slot);
  const means = sheet === null ? ofTimetable(today, walk, madeAt) : await ofSheet(today, walk, sheet, madeAt);
  if (!means) return ok(await keepBare(who, siteId, walk, madeAt));
  const begun = await keepRound(who, today, { ...means, id: walk.round, at: madeAt });
  if (begun.ok) return ok(begun.value.round);
  return begun.reason.why === 'conflict' || begun.reason.why === 'not-found'
    ? ok(await keepBare(who, siteId, walk, madeAt))
    : begun;
}

type Means = Pick<Beginning, 'name' | 'sheet' | 'walks' | 'dueAt'>;

function ofTimetable({ entry: site, stored }: SiteToday, walk: SentWalk, madeAt: Date): Means | null {
  const { facility } = stored;
  const slot = facility.rounds.find(({ key }) => key === walk.slot);
  if (!slot) return null;
  const dueAt = new Date(walk.due ?? madeAt);
  const day = dayIn(site.zone, dueAt);
  const timetable =
    walk.due !== null &&
    walksDue(facility.rounds, site.zone, day, addDays(day, 1), facility.shifts).some(
      (one) => one.slot.key === slot.key && one.dueAt === dueAt.getTime(),
    );
  return { name: slot.name, sheet: sheetOf(facility, slot, day), walks: { slot: slot.key, timetable }, dueAt };
}

/** A walk of a kept sheet goes by the version in force when it comes; lines that it has no more stand beside it. */
async function ofSheet({ entry, stored }: SiteToday, { due }: SentWalk, key: string, at: Date): Promise<Means | null> {
  const { facility } = stored;
  const kept = facility.sheets?.find((one) => one.key === key);
  const inForce = (await listSheetsInForce(entry.id)).find((one) => one.key === key);
  if (!kept || !inForce || due === null) return null;
  const dueAt = new Date(due);
  const standings = await sheetsStanding(entry, facility, at);
  const walk = standings.find((one) => one.sheet === key && one.dueAt === dueAt.getTime());
  if (!walk) return null;
  const walks = { sheetId: inForce.id, sheetVersion: inForce.version };
  return { name: kept.name, sheet: walkedSheet(stored.reviewed, kept, walk.date), walks, dueAt };
}
