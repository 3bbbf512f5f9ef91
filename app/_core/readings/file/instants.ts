import { addDays } from '../../time/add-days';
import { dayLengthMin, dayStart, instantsOf, wallClock } from '../../time/zone';

/** The moment at which a clock showed something. */
export interface Moment {
  atMs: number;
  /** The clocks leap over this time, so it is put off by the length of the leap. */
  isSkipped?: true;
  /** The clocks show it twice: `atMs` is the first time, this the second. */
  againMs?: number;
}

const DAY_MS = 86_400_000;
const FIXED = /^([+-])(\d{2}):(\d{2})$/;

/** Whether a zone is a difference from UTC that holds all year. */
export function isFixed(zone: string): boolean {
  return zone === 'UTC' || FIXED.test(zone);
}

/**
 * Finds moments from what clocks showed, many of one zone after the other: a day without a change of the clocks is asked
 * about once. The rule for times that are leapt over or shown twice is that of `time/zone`; both are told.
 *
 * @param zone   IANA zone, "UTC", or a difference such as "-04:00"
 * @returns      the moment of a day (days since 1970) and the ms since 00:00 on the wall
 * @throws       RangeError when there is no such zone
 */
export function momentsIn(zone: string): (day: number, dayMs: number) => Moment {
  const fixed = FIXED.exec(zone);
  if (zone === 'UTC') return (day, dayMs) => ({ atMs: day * DAY_MS + dayMs });
  if (fixed) {
    const [, sign, hours, minutes] = fixed;
    const aheadMs = (sign === '-' ? -1 : 1) * (Number(hours) * 60 + Number(minutes)) * 60_000;
    return (day, dayMs) => ({ atMs: day * DAY_MS + dayMs - aheadMs });
  }
  const starts = new Map<number, { startMs: number | null; date: string }>();
  const known = (day: number) => {
    const there = starts.get(day);
    if (there) return there;
    const date = addDays('1970-01-01', day);
    const found = { date, startMs: dayLengthMin(zone, date) === 1440 ? dayStart(zone, date) : null };
    starts.set(day, found);
    return found;
  };
  return (day, dayMs) => {
    // 24:00 is the beginning of the day that follows.
    if (dayMs >= DAY_MS) return onDay(zone, known(day + 1), dayMs - DAY_MS);
    return onDay(zone, known(day), dayMs);
  };
}

function onDay(zone: string, { startMs, date }: { startMs: number | null; date: string }, dayMs: number): Moment {
  if (startMs !== null) return { atMs: startMs + dayMs };
  const minutes = Math.floor(dayMs / 60_000);
  const restMs = dayMs - minutes * 60_000;
  const time = `${pad(Math.floor(minutes / 60))}:${pad(minutes % 60)}`;
  const [first = 0, again] = instantsOf(zone, date, time);
  if (again !== undefined) return { atMs: first + restMs, againMs: again + restMs };
  const isSkipped = wallClock(zone, first).time !== time;
  return { atMs: first + restMs, ...(isSkipped ? { isSkipped } : {}) };
}

function pad(count: number): string {
  return String(count).padStart(2, '0');
}
