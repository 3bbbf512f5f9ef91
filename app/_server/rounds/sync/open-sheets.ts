import 'server-only';
import type { Facility } from '#core/facility/facility';
import { slotOfSheet } from '#core/rounds/walk-name';
import type { SiteEntry } from '#data/sites';
import { sheetsStanding } from '../sheets/sheets-standing';
import { walkedSheet } from '../sheets/walked-sheet';
import type { OpenWalk } from './pack-walk';

/** Walks of kept sheets that may be begun, are begun, or come until an instant. @param untilMs ms since 1970 */
export async function openSheets(
  site: Pick<SiteEntry, 'id'>,
  facility: Facility,
  at: Date,
  untilMs: number,
): Promise<OpenWalk[]> {
  const standings = await sheetsStanding(site, facility, at);
  return standings.flatMap(({ sheet: key, standing, date, round, ...times }) => {
    const sheet = facility.sheets?.find((one) => one.key === key);
    const isOpen =
      standing === 'due' ||
      standing === 'late' ||
      standing === 'begun' ||
      (standing === 'missed' && round !== null) ||
      (standing === 'done' && round?.wantsSecond === true);
    if (!sheet || !(isOpen || (standing === 'ahead' && times.dueAt < untilMs))) return [];
    const { places, signing } = walkedSheet(facility, sheet, date);
    return [{ ...times, round, slot: slotOfSheet(key), name: sheet.name, places, ...(signing && { signing }) }];
  });
}
