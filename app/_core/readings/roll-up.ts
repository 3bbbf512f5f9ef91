/**
 * How readings are rolled up: hours of UTC and days of the site, each worked out anew from the readings themselves whenever
 * one in it is stored or corrected, so that no order in which they come makes a difference.
 */
import { dayStart, wallClock } from '../time/zone';
import { addDays } from '../time/add-days';

const HOUR_MS = 3_600_000;

/**
 * How long a reading holds when none follows: from it to the next of its sensor, and no longer than this. It is how old the
 * newest reading of a device may be. Common practice, no source.
 */
export const HOLD_MS: number = HOUR_MS;

/** How long after its end an hour or a day is rolled up: what is under way then is in it. Common practice, no source. */
export const RIPE_MS = 120_000;

/** A stretch that is rolled up: an hour, or a day of 23 to 25 hours. */
export interface Stretch {
  isDay: boolean;
  /** ms since 1970. */
  fromMs: number;
  toMs: number;
}

/**
 * The hours and days in which something changes when readings are stored from one instant to another: a reading counts where
 * it lies, and holds into what follows.
 *
 * @param zone     IANA zone of the site, whose days are meant
 * @param fromMs   first of them, ms since 1970
 * @param toMs     last of them
 */
export function stretchesTouched(zone: string, fromMs: number, toMs: number): Stretch[] {
  const endMs = toMs + HOLD_MS;
  const found: Stretch[] = [];
  for (let at = Math.floor(fromMs / HOUR_MS) * HOUR_MS; at < endMs; at += HOUR_MS)
    found.push({ isDay: false, fromMs: at, toMs: at + HOUR_MS });
  let date = wallClock(zone, fromMs).date;
  let at = dayStart(zone, date);
  while (at < endMs) {
    date = addDays(date, 1);
    const next = dayStart(zone, date);
    if (next > fromMs && next > at) found.push({ isDay: true, fromMs: at, toMs: next });
    at = next;
  }
  return found;
}
