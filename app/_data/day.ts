import 'server-only';

/** A day of the calendar as a `date` column takes it. @param day ISO date */
export function asDate(day: string): Date {
  return new Date(`${day}T00:00:00Z`);
}

/** A `date` column as an ISO date. */
export function asDay(date: Date): string {
  return date.toISOString().slice(0, 10);
}
