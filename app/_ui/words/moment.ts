import { clockFormat } from './clock-format';

/**
 * A moment on the clocks of a place, short: "Wed 25 Nov, 18:30". The year is left to pages that look back further.
 *
 * @param at     UTC, ISO
 * @param zone   IANA zone
 */
export function momentSaid(at: string | number, zone: string): string {
  const shown = clockFormat('en-GB', {
    weekday: 'short',
    day: 'numeric',
    month: 'short',
    hour: '2-digit',
    minute: '2-digit',
    timeZone: zone,
  });
  return shown.format(new Date(at));
}

/** The time of day at a place: "18:30". */
export function timeSaid(at: string | number, zone: string): string {
  return clockFormat('en-GB', { hour: '2-digit', minute: '2-digit', timeZone: zone }).format(new Date(at));
}
