import 'server-only';
import { standing } from '#core/rounds/due';
import { type Result, refused } from '#core/result';
import { newId } from '#data/new-id';
import { listSheetsInForce } from '#data/rounds/sheet-versions';
import type { RoundAddress } from '#shape/rounds/requests';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import type { SiteToday } from '../reviews/find-stored-site';
import { keepRound } from './keep-round';
import { sheetsStanding } from './sheets/sheets-standing';
import { walkedSheet } from './sheets/walked-sheet';

/** Begins a round of a kept sheet that is due or late, on the sheet as it is in force now. */
export async function beginSheet(
  who: Who,
  found: SiteToday,
  { sheet: key, due }: { sheet: string; due: string },
): Promise<Result<RoundAddress, Refusal>> {
  const { entry, stored } = found;
  const at = now();
  const dueAt = new Date(due);
  const sheet = stored.facility.sheets?.find((one) => one.key === key);
  const standings = await sheetsStanding(entry, stored.facility, at);
  const walk = standings.find((one) => one.sheet === key && one.dueAt === dueAt.getTime());
  const inForce = (await listSheetsInForce(entry.id)).find((one) => one.key === key);
  if (!(sheet && walk && inForce)) return refused({ why: 'not-found', what: 'round' });
  // One that somebody else has begun meanwhile is theirs as well, so that only the time counts here.
  const stands = standing(walk, null, null, at.getTime());
  if (stands === 'ahead') return refused({ why: 'conflict', now: `${sheet.name} cannot be begun yet.` });
  if (stands === 'missed' && walk.round === null)
    return refused({ why: 'conflict', now: `${sheet.name} was missed: the next one may be begun. Walk that.` });
  return await keepRound(who, found, {
    name: sheet.name,
    sheet: walkedSheet(stored.reviewed, sheet, walk.date),
    walks: { sheetId: inForce.id, sheetVersion: inForce.version },
    id: newId(),
    dueAt,
    at,
  });
}
