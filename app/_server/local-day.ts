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
