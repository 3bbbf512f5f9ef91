import type { Facility } from '#core/facility/facility';
import { ROLES } from '#core/rota/rota';
import { onNow } from '#core/rota/on-now';
import { type WalkDue, walksDue } from '#core/rounds/due';
import { addDays } from '#core/time/add-days';
import { type Random, randomOf } from './random';
import type { LocalDay } from './span';

const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;

/** One walk of the timetable that was begun. */
export interface PastWalk {
  walk: WalkDue;
  begunMs: number;
  /** Key of the person. */
  by: string;
  /** Null for one that nobody signed. */
  signedMs: number | null;
  secondLook: { atMs: number; by: string } | null;
}

/** How often a walk is left out, and how often it is late. Common practice, no source. */
const MISSED = 0.03;
const LATE = 0.07;
/** Up to now everything was calm for so long, so that whoever opens a demonstration at any hour finds what is meant. */
const CALM_MS = 48 * HOUR_MS;
/** A second look lags; of the last days none was had. */
const NOT_YET_MS = 80 * HOUR_MS;

/**
 * The walks that were begun up to now; those that are missing were missed, or are due still.
 *
 * @param pinned   when those were begun that a story tells of, by slot and day
 */
export function pastWalks(
  facility: Facility,
  days: readonly LocalDay[],
  untilMs: number,
  pinned: ReadonlyMap<string, number>,
): PastWalk[] {
  const { zone, key } = facility.site;
  const [first, last] = [days[0]?.date ?? '', days.at(-1)?.date ?? ''];
  const walks = walksDue(facility.rounds, zone, first, addDays(last, 1), facility.shifts);
  return walks.flatMap((walk) => {
    const random = randomOf(key, 'walk', walk.slot.key, walk.date);
    const isOfLate = walk.dueAt > untilMs - CALM_MS;
    const begunMs = pinned.get(`${walk.slot.key} ${walk.date}`) ?? beginning(walk, random, isOfLate);
    const minutes = random.between(24, 46);
    // Whoever was there until a moment ago stays to walk it.
    const by = walker(facility, begunMs ?? walk.dueAt, random) ?? walker(facility, walk.dueAt - HOUR_MS / 2, random);
    if (begunMs === null || by === null || begunMs + minutes * MINUTE_MS > untilMs) return [];
    // One that was walked to its end and, for the door bell, never signed.
    const isForgotten = random.happens(0.008) && !isOfLate;
    const signedMs = isForgotten ? null : Math.round((begunMs + minutes * MINUTE_MS) / 1000) * 1000;
    return [
      {
        walk,
        begunMs,
        by,
        signedMs,
        secondLook: signedMs === null ? null : looking(facility, { signedMs, by, untilMs }, random),
      },
    ];
  });
}

/** @param isOfLate whether it is of the last days, when all are walked in time */
function beginning({ dueAt, lateAt, closesAt }: WalkDue, random: Random, isOfLate: boolean): number | null {
  if (random.happens(MISSED) && !isOfLate) return null;
  const latest = Math.min(closesAt - HOUR_MS, lateAt + 90 * MINUTE_MS);
  if (random.happens(LATE) && latest > lateAt && !isOfLate) return second(random.between(lateAt + MINUTE_MS, latest));
  return second(dueAt + random.between(-6, 24) * MINUTE_MS);
}

function second(ms: number): number {
  return Math.round(ms / 1000) * 1000;
}

/** Somebody who is in the house; the lead rather seldom. */
function walker(facility: Facility, atMs: number, random: Random): string | null {
  const here = onNow({ ...facility, exceptions: [] }, atMs).filter(({ kind }) => kind === 'on-site');
  return here.length === 0 ? null : random.one(here).person;
}

/** A lead or a manager who did not walk it looks at it again, hours or days later. */
function looking(
  { people }: Facility,
  { signedMs, by, untilMs }: { signedMs: number; by: string; untilMs: number },
  random: Random,
): PastWalk['secondLook'] {
  const may = people.filter(({ key, role }) => key !== by && ROLES.indexOf(role) >= ROLES.indexOf('lead'));
  const atMs = second(signedMs + random.between(0.5, 46) * HOUR_MS);
  if (may.length === 0 || atMs > untilMs - NOT_YET_MS || random.happens(0.06)) return null;
  return { atMs, by: random.one(may).key };
}
