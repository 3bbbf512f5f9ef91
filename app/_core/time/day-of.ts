import { DAYS, type Day } from '../facility/site';
import { dayNumber } from './days';

/** 1970-01-01, from which days are counted, was a Thursday: three days after Monday. */
const FIRST_DAY = 3;

/** Day of the week of an ISO date, in the proleptic Gregorian calendar. */
export function dayOf(date: string): Day {
  return DAYS[(((dayNumber(date) + FIRST_DAY) % 7) + 7) % 7] ?? 'mon';
}
