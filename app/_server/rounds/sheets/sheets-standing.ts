import 'server-only';
import type { Facility } from '#core/facility/facility';
import { type BegunSheet, type SheetStanding, sheetStandings } from '#core/rounds/sheet-standings';
import { listRounds, type RoundRow } from '#data/rounds/list-rounds';
import { openSheetDues } from '#data/rounds/sheet-dues';
import { listSheetsInForce } from '#data/rounds/sheet-versions';
import type { SiteEntry } from '#data/sites';
import { duesKnown } from './plan-dues';

/** A round of a kept sheet. */
export type SheetRound = BegunSheet & Omit<RoundRow, 'sheet' | 'dueAt' | 'begunAt'>;

const DAY_MS = 86_400_000;
/** Days back within which what has closed is told of. */
const DAYS_BACK = 8;
/** Days ahead that may be told of. */
const DAYS_AHEAD = 60;

/**
 * How the kept sheets of a site stand at an instant: derived when it is read, so that a worker that is late lies on no screen. What
 * closed more than a week ago is left out, unless it was begun and is not signed. None is asked for where the site keeps no sheet.
 *
 * @param daysAhead   of what cannot be begun yet, as much as may be begun within so many days
 */
export async function sheetsStanding(
  site: Pick<SiteEntry, 'id'>,
  facility: Facility,
  at: Date,
  daysAhead = DAYS_AHEAD,
): Promise<SheetStanding<SheetRound>[]> {
  return (await sheetsAndRounds(site, facility, at, daysAhead))?.standings ?? [];
}

/**
 * The same, with every round of the site that was due within the past days or is due in those to come, which had to be asked for;
 * null where it keeps no sheet.
 */
export async function sheetsAndRounds(
  site: Pick<SiteEntry, 'id'>,
  facility: Facility,
  at: Date,
  daysAhead: number,
): Promise<{ standings: SheetStanding<SheetRound>[]; rows: RoundRow[] } | null> {
  if (!facility.sheets || facility.sheets.length === 0) return null;
  const from = new Date(at.getTime() - DAYS_BACK * DAY_MS);
  const to = new Date(at.getTime() + (DAYS_AHEAD + 2) * DAY_MS);
  const [inForce, kept] = await Promise.all([listSheetsInForce(site.id), openSheetDues(site.id, from, at)]);
  const rows = await listRounds(
    site.id,
    from,
    to,
    kept.flatMap(({ round }) => round ?? []),
  );
  const untilMs = at.getTime() + daysAhead * DAY_MS;
  const derived = duesKnown(facility, inForce, at).flatMap(({ key, dues }) =>
    dues.filter(({ opensAt }) => opensAt <= untilMs).map((due) => ({ ...due, sheet: key })),
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
  const standings = sheetStandings(
    kept.map(({ round: _, ...due }) => due),
    derived,
    rounds,
    at.getTime(),
  );
  return { standings, rows };
}
