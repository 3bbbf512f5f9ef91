import 'server-only';

/**
 * The calendar day at a place.
 * @param zone IANA zone
 * @returns ISO date, "2026-11-25"
 */
export function dayIn(zone: string, instant: Date): string {
  // The Swedish way of writing a date is the ISO one.
  return new Intl.DateTimeFormat('sv-SE', { timeZone: zone, dateStyle: 'short' }).format(instant);
}
