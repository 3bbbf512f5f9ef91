import 'server-only';
import type { Facility } from '#core/facility/facility';
import { siteDays } from '#core/rounds/schedule';
import { type SheetDue, sheetDues } from '#core/rounds/sheet-due';
import { addDays } from '#core/time/add-days';
import { loadFacility } from '#data/facility/load-facility';
import { dropRetiredDues, keepSheetDues } from '#data/rounds/sheet-dues';
import { listSheetsInForce, type SheetInForce } from '#data/rounds/sheet-versions';
import { findSiteById } from '#data/sites';
import { inTransaction } from '#data/transaction';
import { dayIn } from '../../local-day';

/** Days ahead for which due times are kept. */
const DAYS_AHEAD = 60;
/** Days back that are made good when no worker ran. */
const DAYS_BACK = 7;

/**
 * Works out when the sheets of a site are due, sixty days ahead. Doing it twice changes nothing; what has come stays as it was.
 *
 * @param siteId   the site; one that is gone is let be
 * @param at       the instant
 */
export async function planDues(siteId: string, at: Date): Promise<void> {
  const site = await findSiteById(siteId);
  if (!site) return;
  await inTransaction(async (tx) => {
    await dropRetiredDues(tx, siteId, at);
    const inForce = await listSheetsInForce(siteId, tx);
    const loaded = inForce.length > 0 ? await loadFacility(siteId, tx) : null;
    if (!loaded) return;
    for (const sheet of inForce) {
      const dues = duesAhead(loaded.facility, sheet, at);
      if (dues) await keepSheetDues(tx, siteId, sheet, dues, at);
    }
  });
}

/** When a sheet is due from the past days on, but never before it came into force; null when it is not described. */
export function duesAhead(facility: Facility, { key, inForceFrom }: SheetInForce, at: Date): SheetDue[] | null {
  const sheet = facility.sheets?.find((one) => one.key === key);
  if (!sheet) return null;
  const today = dayIn(facility.site.zone, at);
  const days = siteDays(facility.site);
  const dues = sheetDues(sheet, days, addDays(today, -DAYS_BACK), addDays(today, DAYS_AHEAD + 1), facility.shifts);
  return dues.filter(({ dueAt }) => dueAt >= inForceFrom.getTime());
}
