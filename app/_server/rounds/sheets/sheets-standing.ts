import 'server-only';
import type { Facility } from '#core/facility/facility';
import { type BegunSheet, type SheetStanding, sheetStandings } from '#core/rounds/sheet-standings';
import { listRounds, type RoundRow } from '#data/rounds/list-rounds';
import { listSheetDues } from '#data/rounds/sheet-dues';
import { listSheetsInForce } from '#data/rounds/sheet-versions';
import type { SiteEntry } from '#data/sites';
import { duesAhead } from './plan-dues';

/** A round of a kept sheet. */
export type SheetRound = BegunSheet & Omit<RoundRow, 'sheet' | 'dueAt' | 'begunAt'>;

const DAY_MS = 86_400_000;
/** Days back within which what is not done is told of: a yearly one may be made good for as long. */
const DAYS_BACK = 400;
/** Days ahead that are told of. */
const DAYS_AHEAD = 60;

/**
 * How the kept sheets of a site stand at an instant, from the past to sixty days ahead: derived when it is read, so that a
 * worker that is late lies on no screen. None is asked for where the site keeps no sheet.
 */
export async function sheetsStanding(
  site: Pick<SiteEntry, 'id'>,
  facility: Facility,
  at: Date,
): Promise<SheetStanding<SheetRound>[]> {
  if (!facility.sheets || facility.sheets.length === 0) return [];
  const from = new Date(at.getTime() - DAYS_BACK * DAY_MS);
  const to = new Date(at.getTime() + (DAYS_AHEAD + 2) * DAY_MS);
  const [inForce, kept, rows] = await Promise.all([
    listSheetsInForce(site.id),
    listSheetDues(site.id, from, at),
    listRounds(site.id, from, to),
  ]);
  const derived = inForce.flatMap((sheet) =>
    (duesAhead(facility, sheet, at) ?? []).map((due) => ({ ...due, sheet: sheet.key })),
  );
  const rounds = rows.flatMap(({ sheet, dueAt, begunAt, ...row }) =>
    sheet === null
      ? []
      : [
          {
            ...row,
            sheet,
            dueAt: dueAt.getTime(),
            begunAt: begunAt.getTime(),
            signedAt: row.signed?.at.getTime() ?? null,
          },
        ],
  );
  return sheetStandings(kept, derived, rounds, at.getTime());
}
