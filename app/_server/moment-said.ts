import 'server-only';
import { wallClock } from '#core/time/zone';

/**
 * A moment as the clocks of a site show it: "14:05", with its day when that is another than today.
 *
 * @param zone   IANA zone of the site
 * @param today  a moment of today
 */
export function momentSaid(zone: string, at: Date, today: Date): string {
  const { date, time } = wallClock(zone, at.getTime());
  return date === wallClock(zone, today.getTime()).date ? time : `${time} on ${date}`;
}
