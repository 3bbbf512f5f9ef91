import { lastFor } from '../last-for';
import type { Shift } from '../rota/rota';
import { addDays } from '../time/add-days';
import { type Instant, wallClock } from '../time/zone';
import { type Standing, standing, type WalkDue, walksDue } from './due';
import type { RoundSlot } from './slot';

/** A round that was begun, as far as its standing goes. */
export interface BegunRound {
  /** Key of its slot. */
  slot: string;
  dueAt: Instant;
  begunAt: Instant;
  signedAt: Instant | null;
}

/** A walk of the timetable and how it stands. */
export interface WalkStanding<R extends BegunRound> extends WalkDue {
  standing: Standing;
  round: R | null;
}

/** What of a timetable is to be told of. */
export interface Asked<R extends BegunRound> {
  slots: readonly RoundSlot[];
  shifts: readonly Shift[];
  zone: string;
  /** Rounds that were begun, from `sinceMs` on at least. */
  rounds: readonly R[];
  now: Instant;
  /** Walks that were late before this are not told of: the site was not yet walked with Holdfast, or it is too long ago. */
  since: Instant;
}

/** Late and missed walks that a system was to be seen on. */
export interface Overdue {
  late: number;
  missed: number;
}

const walksOf = lastFor<readonly WalkDue[]>();

/** The walks from an instant on to the end of the day at the site, and how each stands, in order of when they are due. */
export function standings<R extends BegunRound>({
  slots,
  shifts,
  zone,
  rounds,
  now,
  since,
}: Asked<R>): WalkStanding<R>[] {
  const from = wallClock(zone, since).date;
  const to = addDays(wallClock(zone, now).date, 1);
  const begun = new Map(rounds.map((round) => [`${round.slot} ${round.dueAt}`, round]));
  return walksOf(slots, [zone, from, to, shifts], () => walksDue(slots, zone, from, to, shifts))
    .filter(({ lateAt }) => lateAt > since)
    .map((walk) => {
      const round = begun.get(`${walk.slot.key} ${walk.dueAt}`) ?? null;
      return { ...walk, round, standing: standing(walk, round?.begunAt ?? null, round?.signedAt ?? null, now) };
    });
}

/**
 * How many walks are late, and how many were missed, for each system they were to pass.
 * @param systems keys of the systems of the site
 * @param missedSince missed walks that closed before this are left out
 */
export function overdueBySystem<R extends BegunRound>(
  walks: readonly WalkStanding<R>[],
  systems: readonly string[],
  missedSince: Instant,
): Map<string, Overdue> {
  const counts = new Map(systems.map((system): [string, Overdue] => [system, { late: 0, missed: 0 }]));
  for (const walk of walks)
    for (const system of walk.slot.systems ?? systems) {
      const count = counts.get(system);
      if (!count) continue;
      if (walk.standing === 'late') count.late += 1;
      if (walk.standing === 'missed' && walk.closesAt >= missedSince) count.missed += 1;
    }
  return counts;
}
