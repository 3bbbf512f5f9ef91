/**
 * What this room knows: the week on the wall clock, in seconds since Monday 00:00.
 * What it leaves out: dates, zones and clock changes; a weekly pattern repeats on the wall whatever the offset.
 * Where the numbers come from: ISO 8601 (the week begins on Monday).
 */
import { DAYS, type Day } from '../facility/site';

export const MINUTE = 60;
export const HOUR = 3600;
export const DAY = 86_400;
export const WEEK = 7 * DAY;
/** Hours of a week: the length of every by-hour list of a review. */
export const HOURS_OF_WEEK = 168;

/**
 * Second of the week at which a local time of a day falls.
 * @param time "HH:MM", 00:00 to 23:59
 * @returns s since Monday 00:00, 0 to 604 740
 */
export function weekSecond(day: Day, time: string): number {
  const [hours = 0, minutes = 0] = time.split(':').map(Number);
  return DAYS.indexOf(day) * DAY + hours * HOUR + minutes * MINUTE;
}

/** Seconds from `from` forward to the next `to` on the wall, 0 to a week (less one second). Both in s since some Monday 00:00. */
export function forward(from: number, to: number): number {
  return (((to - from) % WEEK) + WEEK) % WEEK;
}
