import 'server-only';
import type { Sheet } from '#core/rounds/sheet';
import { ok, type Result, refused } from '#core/result';
import { news } from '#data/news';
import { appendRecords } from '#data/records/append-records';
import { addRound, findSlotId, sensorIds } from '#data/rounds/round-row';
import { inTransaction, type Transaction } from '#data/transaction';
import type { RoundAddress } from '#shape/rounds/requests';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import type { SiteToday } from '../reviews/find-stored-site';

/** What a round walks: a slot of the timetable, on time or besides it, or a kept sheet in one of its versions. */
type Walks = { slot: string; timetable: boolean } | { sheetId: string; sheetVersion: number };

/** A round that is to be begun. */
export interface Beginning {
  name: string;
  sheet: Sheet;
  walks: Walks;
  id: string;
  dueAt: Date;
  at: Date;
}

/**
 * Keeps a round with its sheet as it is now: one that is changed while it is walked stays as it was begun. One that somebody
 * else has begun is theirs as well.
 *
 * @returns   where it is
 */
export async function keepRound(
  who: Who,
  { entry: site }: SiteToday,
  { name, sheet, walks, id, dueAt, at }: Beginning,
): Promise<Result<RoundAddress, Refusal>> {
  if (sheet.places.length === 0)
    return refused({
      why: 'conflict',
      now: 'Nothing that this round looks at is described yet: its sheet would be empty.',
    });
  const systems = [...new Set(sheet.places.flatMap(({ system }) => system?.key ?? []))];
  return await inTransaction(async (tx) => {
    const walked = await idsOf(tx, site.id, walks);
    if (!walked) return refused({ why: 'not-found', what: 'round' });
    const sensors = Object.fromEntries(await sensorIds(tx, site.id, systems));
    const row = { id, name, dueAt, begunAt: at, begunBy: who.id, sheet: { ...sheet, sensors } };
    const { said, ...ids } = walked;
    const round = await addRound(tx, site.id, { ...row, ...ids });
    if (round.isNew) {
      const body = { by: who.id, round: round.id, ...said, due: dueAt.toISOString() };
      await appendRecords(tx, site.id, [{ kind: 'round-begun', body }], now());
      await news(tx, site.id, 'rounds');
    }
    return ok({ site: site.key, round: round.id });
  });
}

/** Ids that the row of a round holds, and what the record says of it; null when the slot is no more. */
async function idsOf(tx: Transaction, siteId: string, walks: Walks) {
  if (!('slot' in walks)) {
    const { sheetId, sheetVersion } = walks;
    const said = { sheet: sheetId, version: sheetVersion, besides: false };
    return { slotId: null, sheetId, sheetVersion, said };
  }
  const slotId = await findSlotId(tx, siteId, walks.slot);
  if (slotId === null) return null;
  const said = { slot: slotId, besides: !walks.timetable };
  return { slotId: walks.timetable ? slotId : null, sheetId: null, sheetVersion: null, said };
}
