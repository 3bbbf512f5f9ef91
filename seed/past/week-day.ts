import { dayNumber } from '#core/time/days';

/** Day of the week of an ISO date, 0 Monday to 6 Sunday. 1970-01-01 was a Thursday. */
export function weekDay(date: string): number {
  return (((dayNumber(date) + 3) % 7) + 7) % 7;
}
