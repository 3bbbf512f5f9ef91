import { addDays } from '#core/time/add-days';
import { instantOf } from '#core/time/zone';

/** Days of past that a demonstration has, the day it is shown on not counted. */
export const DAYS_BACK = 60;

/** One calendar day at a site. */
export interface LocalDay {
  /** ISO date. */
  date: string;
  /** Its midnights, ms since 1970: 23 to 25 hours apart. */
  fromMs: number;
  toMs: number;
}

/**
 * The days of the past of a site, oldest first; the last is the day itself.
 *
 * @param today   ISO date on which the demonstration is shown
 */
export function daysBack(zone: string, today: string): LocalDay[] {
  return Array.from({ length: DAYS_BACK + 1 }, (_, i) => {
    const date = addDays(today, i - DAYS_BACK);
    return { date, fromMs: instantOf(zone, date, '00:00'), toMs: instantOf(zone, addDays(date, 1), '00:00') };
  });
}

/** A place in the past: so many days before the day it is shown on, at a time of the site's clock. */
export function pastInstant(zone: string, today: string, daysAgo: number, time: string): number {
  return instantOf(zone, addDays(today, -daysAgo), time);
}
