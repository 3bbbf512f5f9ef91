import 'server-only';
import { sheetOf } from '#core/rounds/sheet';
import { ok, type Result, refused } from '#core/result';
import type { RoundSlot } from '#core/rounds/slot';
import { news } from '#data/news';
import { appendRecords } from '#data/records/append-records';
import { addRound, findSlotId, sensorIds } from '#data/rounds/round-row';
import { inTransaction } from '#data/transaction';
import type { RoundAddress } from '#shape/rounds/requests';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import type { SiteToday } from '../reviews/find-stored-site';

/** A round that is to be begun. */
export interface Beginning {
  slot: RoundSlot;
  timetable: boolean;
  id: string;
  dueAt: Date;
  /** Day of the round, ISO date at the site. */
  day: string;
  at: Date;
}

/**
 * Keeps a round with its sheet as it is now. One of the timetable that somebody else has begun is theirs as well.
 *
 * @returns   where it is
 */
export async function keepRound(
  who: Who,
  { entry: site, stored }: SiteToday,
  { slot, timetable, id, dueAt, day, at }: Beginning,
): Promise<Result<RoundAddress, Refusal>> {
  const sheet = sheetOf(stored.facility, slot, day);
  if (sheet.places.length === 0)
    return refused({
      why: 'conflict',
      now: 'Nothing that this round looks at is described yet: its sheet would be empty.',
    });
  const systems = [...new Set(sheet.places.flatMap(({ system }) => system?.key ?? []))];
  return await inTransaction(async (tx) => {
    const slotId = await findSlotId(tx, site.id, slot.key);
    if (slotId === null) return refused({ why: 'not-found', what: 'round' });
    const sensors = Object.fromEntries(await sensorIds(tx, site.id, systems));
    const row = { id, name: slot.name, dueAt, begunAt: at, begunBy: who.id, sheet: { ...sheet, sensors } };
    const round = await addRound(tx, site.id, { ...row, slotId: timetable ? slotId : null });
    if (round.isNew) {
      const body = { by: who.id, round: round.id, slot: slotId, due: dueAt.toISOString(), besides: !timetable };
      await appendRecords(tx, site.id, [{ kind: 'round-begun', body }], now());
      await news(tx, site.id, 'rounds');
    }
    return ok({ site: site.key, round: round.id });
  });
}
