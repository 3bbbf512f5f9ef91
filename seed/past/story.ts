import { addDays } from '#core/time/add-days';
import { instantOf } from '#core/time/zone';
import { weekDay } from './week-day';

const MINUTE_MS = 60_000;

/** When the two losses of the demonstration happened. Their days fall on the weekdays they are told of, whatever today is. */
export interface PoolStory {
  /** The pumps were paused for feeding, and nobody ended it. */
  pausedMs: number;
  /** Who came switched them on again. */
  putRightMs: number;
  onSceneMs: number;
}

export interface WindowStory {
  /** The heater's contacts stayed shut. */
  weldedMs: number;
  seenMs: number;
  unpluggedMs: number;
}

/** The last day of a weekday that lies so many days back at least. @param day 0 Monday to 6 Sunday */
function lastDay(today: string, day: number, atLeast: number): string {
  let date = addDays(today, -atLeast);
  while (weekDay(date) !== day) date = addDays(date, -1);
  return date;
}

/** A Wednesday evening at the Harbour: whoever fed the rays went home. */
export function poolStory(zone: string, today: string): PoolStory {
  const pausedMs = instantOf(zone, lastDay(today, 2, 38), '18:42');
  return { pausedMs, onSceneMs: pausedMs + 137 * MINUTE_MS, putRightMs: pausedMs + 143 * MINUTE_MS };
}

/** A Sunday at Mill Lane: the buzzer sounded where nobody stood. */
export function windowStory(zone: string, today: string): WindowStory {
  const date = lastDay(today, 6, 2);
  const seenMs = instantOf(zone, date, '15:44');
  return { weldedMs: instantOf(zone, date, '09:35'), seenMs, unpluggedMs: seenMs + 3 * MINUTE_MS };
}
