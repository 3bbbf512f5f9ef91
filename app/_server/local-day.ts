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

/**
 * Day and time at a place.
 * @param zone IANA zone
 * @returns "2026-11-25 18:30:00"
 */
export function timeIn(zone: string, instant: Date): string {
  return new Intl.DateTimeFormat('sv-SE', { timeZone: zone, dateStyle: 'short', timeStyle: 'medium' }).format(instant);
}
