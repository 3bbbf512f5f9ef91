import { addDays } from './add-days';
import { dayNumber } from './days';

/** 1970-01-01, from which days are counted, was a Thursday: three days after Monday. */
const FIRST_DAY = 3;

/** The Monday of the week that a day lies in (ISO 8601). @param date "YYYY-MM-DD" */
export function mondayOf(date: string): string {
  const after = (((dayNumber(date) + FIRST_DAY) % 7) + 7) % 7;
  return addDays(date, -after);
}
