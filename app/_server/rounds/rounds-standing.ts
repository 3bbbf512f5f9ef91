import 'server-only';
import type { Facility } from '#core/facility/facility';
import { type Overdue, overdueBySystem, standings, type WalkStanding } from '#core/rounds/standings';
import { listRounds, type RoundRow, walkedSince } from '#data/rounds/list-rounds';
import type { SiteEntry } from '#data/sites';

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
  const [rows, begun] = await Promise.all([
    listRounds(site.id, new Date(far), new Date(now + 2 * DAY_MS)),
    walkedSince(site.id),
  ]);
  const since = Math.max(far, begun.getTime());
  const rounds = rows.flatMap((row) => (row.slot === null ? [] : [inInstants(row, row.slot)]));
  const { rounds: slots, shifts } = facility;
  const walks = standings({ slots, shifts, zone: site.zone, rounds, now, since });
  const recent = walks.filter(({ closesAt }) => closesAt >= now - DAY_MS);
  return {
    walks,
    besides: rows.filter(({ slot, sheet }) => slot === null && sheet === null),
    late: walks.filter((walk) => walk.standing === 'late').length,
    missed: recent.filter((walk) => walk.standing === 'missed').length,
    bySystem: overdueBySystem(
      walks,
      facility.systems.map(({ key }) => key),
      now - DAY_MS,
    ),
  };
}

function inInstants(row: RoundRow, slot: string): SlotRound {
  const { dueAt, begunAt, signed } = row;
  return { ...row, slot, dueAt: dueAt.getTime(), begunAt: begunAt.getTime(), signedAt: signed?.at.getTime() ?? null };
}
