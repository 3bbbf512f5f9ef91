import 'server-only';
import type { Facility } from '#core/facility/facility';
import { loudLines, quietSpans } from '#core/plans/quiet-hours';
import { movesWithQuiet } from '#core/rounds/quiet-sheet';
import { siteDays } from '#core/rounds/schedule';
import type { RoundSheet } from '#core/rounds/round-sheet';
import { onSiteTurns, type SheetDue, sheetDues } from '#core/rounds/sheet-due';
import { addDays } from '#core/time/add-days';
import { loadFacility } from '#data/facility/load-facility';
import { type DuesOf, keepSheetDues } from '#data/rounds/sheet-dues';
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
    const inForce = await listSheetsInForce(siteId, tx);
    const loaded = inForce.length > 0 ? await loadFacility(siteId, tx) : null;
    const dues = loaded ? duesAhead(loaded.facility, inForce, at) : [];
    await keepSheetDues(tx, siteId, dues, at);
  });
}

/** When the sheets of a site are due from the past days on, but none before it came into force. */
export function duesAhead(
  facility: Facility,
  inForce: readonly SheetInForce[],
  at: Date,
): (DuesOf & { key: string })[] {
  const { zone } = facility.site;
  const today = dayIn(zone, at);
  const days = siteDays(facility.site);
  const [from, to] = [addDays(today, -DAYS_BACK), addDays(today, DAYS_AHEAD + 1)];
  const turns = onSiteTurns(facility.shifts, zone, from, to);
  const loud = loudLines(facility);
  // A time of the last day may be put off for as long as a week.
  const quiet = loud.size > 0 ? quietSpans(facility.site, from, addDays(to, 8)) : [];
  const sheets = new Map(facility.sheets?.map((sheet) => [sheet.key, sheet]));
  // Sheets of many systems come round together: each schedule is worked out once.
  const known = new Map<string, SheetDue[]>();
  const duesOf = (sheet: RoundSheet) => {
    const isMoved = movesWithQuiet(sheet, loud);
    const name = JSON.stringify([sheet.schedule, sheet.graceMin, isMoved]);
    const scheduled = { ...sheet, ...(isMoved && { quiet }) };
    const found = known.get(name) ?? sheetDues(scheduled, days, from, to, turns);
    known.set(name, found);
    return found;
  };
  return inForce.flatMap(({ id, key, version, inForceFrom }) => {
    const sheet = sheets.get(key);
    if (!sheet) return [];
    return [{ id, key, version, dues: duesOf(sheet).filter(({ dueAt }) => dueAt >= inForceFrom.getTime()) }];
  });
}

/** What `duesAhead` last said of a site, for as long as it is described so. */
const kept = new WeakMap<Facility, { name: string; dues: ReturnType<typeof duesAhead> }>();

/** The same, worked out once for a day and what is in force, however often a site is looked at. */
export function duesKnown(
  facility: Facility,
  inForce: readonly SheetInForce[],
  at: Date,
): ReturnType<typeof duesAhead> {
  const name = JSON.stringify([dayIn(facility.site.zone, at), inForce]);
  const found = kept.get(facility);
  if (found?.name === name) return found.dues;
  const dues = duesAhead(facility, inForce, at);
  kept.set(facility, { name, dues });
  return dues;
}
