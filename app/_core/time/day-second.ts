import { DAY } from './week';
import { type Instant, wallClock } from './zone';

/** ms within which the clocks of no place change but at the ends. */
const QUARTER_MS = 900_000;

/**
 * Seconds that the clocks of a place show since midnight, for a caller that asks for many moments: the zone is looked up once
 * a quarter of an hour.
 *
 * @param zone   IANA zone
 * @returns      of a moment: 0 to 86 399.999
 */
export function daySecondIn(zone: string): (instant: Instant) => number {
  let quarter = Number.NaN;
  let shownS = 0;
  return (instant) => {
    const now = Math.floor(instant / QUARTER_MS);
    if (now !== quarter) {
      const [hours = 0, minutes = 0] = wallClock(zone, now * QUARTER_MS)
        .time.split(':')
        .map(Number);
      quarter = now;
      shownS = (hours * 60 + minutes) * 60;
    }
    return (shownS + (instant - now * QUARTER_MS) / 1000) % DAY;
  };
}
