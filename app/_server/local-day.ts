import 'server-only';
import { wallClock } from '#core/time/zone';

/**
 * The calendar day at a place.
 * @param zone IANA zone
 * @returns ISO date, "2026-11-25"
 */
export function dayIn(zone: string, instant: Date): string {
  return wallClock(zone, instant.getTime()).date;
}

/**
 * Day and time at a place.
 * @param zone IANA zone
 * @returns "2026-11-25 18:30:00"
 */
export function timeIn(zone: string, instant: Date): string {
  return new Intl.DateTimeFormat('sv-SE', { timeZone: zone, dateStyle: 'short', timeStyle: 'medium' }).format(instant);
}
