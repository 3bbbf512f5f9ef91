/**
 * Days from 1970-01-01 to an ISO date in the proleptic Gregorian calendar.
 * Calendar arithmetic only: no zone and no clock. Source: the civil-day count is plain integer arithmetic on 400-year
 * cycles of 146 097 days (ISO 8601 calendar).
 * @param date "YYYY-MM-DD"
 * @returns whole days, below 0 before 1970
 */
export function dayNumber(date: string): number {
  const [year = 1970, month = 1, day = 1] = date.split('-').map(Number);
  // Years are counted from March, so that the leap day is the last of its year.
  const y = month > 2 ? year : year - 1;
  const era = Math.floor(y / 400);
  const yearOfEra = y - 400 * era;
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1;
  const dayOfEra = 365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * 146_097 + dayOfEra - 719_468;
}

/** Whole days from one ISO date to another; below 0 when `to` is earlier. */
export function daysBetween(from: string, to: string): number {
  return dayNumber(to) - dayNumber(from);
}
