import 'server-only';
import type { Facility } from '#core/facility/facility';
import { overdueSheets } from '#core/rounds/overdue-sheets';
import { type Overdue, overdueBySystem, standings, type WalkStanding } from '#core/rounds/standings';
import { listRounds, type RoundRow, walkedSince } from '#data/rounds/list-rounds';
import type { SiteEntry } from '#data/sites';
import type { SheetStanding } from '#core/rounds/sheet-standings';
import { type SheetRound, sheetsAndRounds } from './sheets/sheets-standing';

/** A round that was begun by the timetable, in instants. */
export type SlotRound = Omit<RoundRow, 'slot' | 'dueAt' | 'begunAt'> & {
  slot: string;
  dueAt: number;
  begunAt: number;
  signedAt: number | null;
};

/** How the rounds of a site stand. */
export interface RoundsStanding {
  /** Walks of the past days and of today, in order of when they are due. */
  walks: WalkStanding<SlotRound>[];
  /** Due times of kept sheets, of the past days and those that may be begun. */
  sheets: SheetStanding<SheetRound>[];
  /** Rounds walked besides the timetable, the latest first. */
  besides: RoundRow[];
  late: number;
  /** Missed within the past day. */
  missed: number;
  bySystem: Map<string, Overdue>;
}

const DAY_MS = 86_400_000;
/** Days back that are told of. */
const DAYS_BACK = 7;

/**
 * How the rounds of a site stand at an instant: derived from what was begun and signed, so that nothing has to run for a
 * round to be late. Two questions, whatever the site holds.
 */
export async function roundsStanding(
  site: Pick<SiteEntry, 'id' | 'zone'>,
  facility: Facility,
  at: Date,
): Promise<RoundsStanding> {
  const now = at.getTime();
  const far = now - DAYS_BACK * DAY_MS;
  const [begun, kept] = await Promise.all([walkedSince(site.id), sheetsAndRounds(site, facility, at, 0)]);
  const sheets = kept?.standings ?? [];
  const rows = kept
    ? kept.rows.filter(({ dueAt }) => dueAt.getTime() >= far)
    : await listRounds(site.id, new Date(far), new Date(now + 2 * DAY_MS));
  const since = Math.max(far, begun.getTime());
  const rounds = rows.flatMap((row) => (row.slot === null ? [] : [inInstants(row, row.slot)]));
  const { rounds: slots, shifts } = facility;
  const walks = standings({ slots, shifts, zone: site.zone, rounds, now, since });
  const recent = walks.filter(({ closesAt }) => closesAt >= now - DAY_MS);
  const overdue = overdueSheets(facility, sheets, now - DAY_MS);
  const systems = facility.systems.map(({ key }) => key);
  return {
    walks,
    sheets,
    besides: rows.filter(({ slot, sheet }) => slot === null && sheet === null),
    late: walks.filter((walk) => walk.standing === 'late').length + overdue.all.late,
    missed: recent.filter((walk) => walk.standing === 'missed').length + overdue.all.missed,
    bySystem: together(overdueBySystem(walks, systems, now - DAY_MS), overdue.bySystem),
  };
}

/** What is overdue of the timetable and of kept sheets. */
function together(walks: ReadonlyMap<string, Overdue>, sheets: ReadonlyMap<string, Overdue>): Map<string, Overdue> {
  return new Map(
    [...walks].map(([key, { late, missed }]) => {
      const more = sheets.get(key);
      return [key, { late: late + (more?.late ?? 0), missed: missed + (more?.missed ?? 0) }];
    }),
  );
}

function inInstants(row: RoundRow, slot: string): SlotRound {
  const { dueAt, begunAt, signed } = row;
  return { ...row, slot, dueAt: dueAt.getTime(), begunAt: begunAt.getTime(), signedAt: signed?.at.getTime() ?? null };
}
