import 'server-only';
import { walksDue } from '#core/rounds/due';
import { SHEET_FORMAT, sheetOf } from '#core/rounds/sheet';
import { ok, type Result } from '#core/result';
import { addDays } from '#core/time/add-days';
import { appendRecords } from '#data/records/append-records';
import { addRound, findRound } from '#data/rounds/round-row';
import { inTransaction } from '#data/transaction';
import type { SentWalk } from '#shape/rounds/sync';
import { now } from '../../clock';
import type { Refusal } from '../../gate/refusal';
import type { Who } from '../../gate/who';
import { dayIn } from '../../local-day';
import type { SiteToday } from '../../reviews/find-stored-site';
import { keepRound } from '../keep-round';

/**
 * The round that a telephone means, begun if nobody has. A walk of the timetable that somebody else has begun is theirs as well.
 * One that stands in the timetable no more is one besides it; where its sheet is gone too it is begun without a line, for what was
 * entered brings its lines along.
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
  const { entry: site, stored } = today;
  if (await findRound(site.id, walk.round)) return ok(walk.round);
  const slot = stored.facility.rounds.find(({ key }) => key === walk.slot);
  if (!slot) return ok(await keepBare(who, site.id, walk, madeAt));
  const dueAt = new Date(walk.due ?? madeAt);
  const day = dayIn(site.zone, dueAt);
  const { rounds, shifts } = stored.facility;
  const timetable =
    walk.due !== null &&
    walksDue(rounds, site.zone, day, addDays(day, 1), shifts).some(
      (one) => one.slot.key === slot.key && one.dueAt === dueAt.getTime(),
    );
  const sheet = sheetOf(stored.facility, slot, day);
  const walks = { slot: slot.key, timetable };
  const begun = await keepRound(who, today, { name: slot.name, sheet, walks, id: walk.round, dueAt, at: madeAt });
  if (begun.ok) return ok(begun.value.round);
  return begun.reason.why === 'conflict' || begun.reason.why === 'not-found'
    ? ok(await keepBare(who, site.id, walk, madeAt))
    : begun;
}

async function keepBare(who: Who, siteId: string, { round: id, name, due }: SentWalk, at: Date): Promise<string> {
  const sheet = { format: SHEET_FORMAT, places: [], sensors: {} } as const;
  const bare = { slotId: null, sheetId: null, sheetVersion: null };
  const row = { ...bare, id, name, dueAt: new Date(due ?? at), begunAt: at, begunBy: who.id };
  return await inTransaction(async (tx) => {
    const round = await addRound(tx, siteId, { ...row, sheet: { ...sheet, places: [...sheet.places] } });
    const body = { by: who.id, round: id, due: row.dueAt.toISOString(), besides: true };
    if (round.isNew) await appendRecords(tx, siteId, [{ kind: 'round-begun', body }], now());
    return round.id;
  });
}
