import 'server-only';
import type { Facility } from '#core/facility/facility';
import { overdueSheets } from '#core/rounds/overdue-sheets';
import { type Overdue, overdueBySystem, standings, type WalkStanding } from '#core/rounds/standings';
import { listRounds, listRoundsOf, type RoundRow, walkedSinceOf } from '#data/rounds/list-rounds';
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

/** Rounds of several sites, asked for at once, and since when each is walked. */
export interface RoundsOfAll {
  rows: ReadonlyMap<string, RoundRow[]>;
  since: ReadonlyMap<string, Date>;
}

/** What how the rounds of several sites stand is derived from: two questions, however many there are. */
export async function roundsOfAll(siteIds: readonly string[], at: Date): Promise<RoundsOfAll> {
  const [from, to] = told(at);
  const [rows, since] = await Promise.all([listRoundsOf(siteIds, from, to), walkedSinceOf(siteIds)]);
  return { rows, since };
}

/** The time within which rounds are told of. */
function told(at: Date): [Date, Date] {
  return [new Date(at.getTime() - DAYS_BACK * DAY_MS), new Date(at.getTime() + 2 * DAY_MS)];
}

/**
 * How the rounds of a site stand at an instant: derived from what was begun and signed, so that nothing has to run for a
 * round to be late. Two questions, whatever the site holds.
 *
 * @param all   what was asked for of several sites already
 */
export async function roundsStanding(
  site: Pick<SiteEntry, 'id' | 'zone'>,
  facility: Facility,
  at: Date,
  all?: RoundsOfAll,
): Promise<RoundsStanding> {
  const now = at.getTime();
  const far = now - DAYS_BACK * DAY_MS;
  const [walked, kept] = await Promise.all([
    all?.since ?? walkedSinceOf([site.id]),
    sheetsAndRounds(site, facility, at, 0),
  ]);
  const sheets = kept?.standings ?? [];
  const rows = kept
    ? kept.rows.filter(({ dueAt }) => dueAt.getTime() >= far)
    : all
      ? (all.rows.get(site.id) ?? [])
      : await listRounds(site.id, ...told(at));
  // One that was set up since it was asked has been walked for no time.
  const since = Math.max(far, walked.get(site.id)?.getTime() ?? now);
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
