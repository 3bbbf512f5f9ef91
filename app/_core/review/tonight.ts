import { DAYS } from '../facility/site';
import { dayNumber } from '../time/days';
import { HOURS_OF_WEEK } from '../time/week';
import { type Instant, wallClock } from '../time/zone';
import type { Outcome } from './result';

/**
 * Time to spare when the fault begins within an hour of the week, s; null where nobody ever comes, `none` where it harms
 * nothing.
 */
export type SpareHour = number | null | 'none';

/** Time to spare in the hours of a night. */
export interface Tonight {
  /** The least of them, s; null where nobody ever comes. */
  spareS: number | null;
  /** Hour of the week, 0 = Monday 00:00, at which it is so for the first time. */
  hour: number;
}

/** The morning up to which a night is looked at, and the hour from which on it is that of the next day. Common practice, no source. */
const MORNING_H = 7;
const EARLY_H = 6;
/** 1970-01-01, from which days are counted, was a Thursday: three days after Monday. */
const FIRST_DAY = 3;

/** Time to spare of an outcome by the hour of the week, in whole seconds. */
export function spareHours({ harmS, spareS }: Pick<Outcome, 'harmS' | 'spareS'>): SpareHour[] {
  return spareS.map((spare, hour) => {
    if (harmS[hour] === null) return 'none';
    return spare === null ? null : Math.round(spare);
  });
}

/**
 * Hours of the week from now to seven in the morning: of the next day, or before six of the same one. They are those of the
 * wall clock, as the rota is; a night on which the clocks change has as many.
 * @throws RangeError when there is no such zone
 */
export function hoursTonight(zone: string, at: Instant): number[] {
  const { date, time } = wallClock(zone, at);
  const now = Number(time.slice(0, 2));
  const day = (((dayNumber(date) + FIRST_DAY) % DAYS.length) + DAYS.length) % DAYS.length;
  const count = (now < EARLY_H ? MORNING_H : 24 + MORNING_H) - now;
  return Array.from({ length: count }, (_, after) => (24 * day + now + after) % HOURS_OF_WEEK);
}

/**
 * The least time to spare in some hours of the week.
 * @param hours hours of the week, in order
 * @returns null where nothing is harmed in any of them
 */
export function leastIn(spare: readonly SpareHour[], hours: readonly number[]): Tonight | null {
  let least: Tonight | null = null;
  for (const hour of hours) {
    const spareS = spare[hour];
    if (spareS === undefined || spareS === 'none') continue;
    if (least === null || isLess(spareS, least.spareS)) least = { spareS, hour };
  }
  return least;
}

/** Nobody coming is less than any time. */
function isLess(a: number | null, b: number | null): boolean {
  return b !== null && (a === null || a < b);
}
