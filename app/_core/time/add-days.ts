import { dayNumber } from './days';

/**
 * The ISO date some days after another, in the proleptic Gregorian calendar.
 * Calendar arithmetic only: no zone and no clock. Source: the inverse of `dayNumber`, on the same 400-year cycles.
 * @param date "YYYY-MM-DD"
 * @param days whole days, below 0 for earlier; a part of a day is left off
 * @returns "YYYY-MM-DD"
 * @throws RangeError when the date would lie outside the years 0000 to 9999
 */
export function addDays(date: string, days: number): string {
  const shifted = dayNumber(date) + Math.trunc(days) + 719_468;
  const era = Math.floor(shifted / 146_097);
  const dayOfEra = shifted - era * 146_097;
  const leapDays = Math.floor(dayOfEra / 1460) - Math.floor(dayOfEra / 36_524) + Math.floor(dayOfEra / 146_096);
  const yearOfEra = Math.floor((dayOfEra - leapDays) / 365);
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  // Months are counted from March, so that the leap day is the last of its year.
  const month = Math.floor((5 * dayOfYear + 2) / 153);
  const day = dayOfYear - Math.floor((153 * month + 2) / 5) + 1;
  const year = yearOfEra + 400 * era + (month >= 10 ? 1 : 0);
  if (year < 0 || year > 9999) throw new RangeError(`${days} days from ${date} lie outside the years 0000 to 9999`);
  return [pad(year, 4), pad(month >= 10 ? month - 9 : month + 3, 2), pad(day, 2)].join('-');
}

function pad(value: number, digits: number): string {
  return String(value).padStart(digits, '0');
}
