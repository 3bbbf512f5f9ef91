import { DAY, HOUR, HOURS_OF_WEEK, MINUTE } from '#core/time/week';

const STEPS = [
  MINUTE,
  2 * MINUTE,
  5 * MINUTE,
  10 * MINUTE,
  15 * MINUTE,
  30 * MINUTE,
  HOUR,
  2 * HOUR,
  3 * HOUR,
  6 * HOUR,
  12 * HOUR,
  DAY,
  2 * DAY,
];
const DAY_LETTERS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];

/** One mark on an axis of time. */
export interface TimeTick {
  atS: number;
  label: string;
}

/**
 * Round times after the onset.
 * @param untilS s
 * @param most how many fit
 */
export function timeTicks(untilS: number, most: number): TimeTick[] {
  const step = STEPS.find((s) => untilS / s <= most) ?? DAY;
  const count = Math.floor(untilS / step);
  return Array.from({ length: count + 1 }, (_, i) => ({
    atS: i * step,
    label: i === 0 ? '0' : sinceOnset(i * step, step),
  }));
}

function sinceOnset(atS: number, step: number): string {
  if (step >= DAY) return `${atS / DAY} d`;
  if (step >= HOUR) return `${atS / HOUR} h`;
  if (step >= 30 * MINUTE && atS % HOUR !== 0) return `${Math.floor(atS / HOUR)} h ${(atS % HOUR) / MINUTE}`;
  return atS % HOUR === 0 ? `${atS / HOUR} h` : `${atS / MINUTE} min`;
}

/** What the clock on the wall shows some time after an hour of the week: "Sun 02:38". */
export function wallClock(onsetHour: number, afterS: number): string {
  const minutes = Math.round(onsetHour * 60 + afterS / MINUTE) % (HOURS_OF_WEEK * 60);
  const day = DAY_LETTERS[Math.floor(minutes / 1440)] ?? '';
  const clock = (n: number) => String(n).padStart(2, '0');
  return `${day} ${clock(Math.floor((minutes % 1440) / 60))}:${clock(minutes % 60)}`;
}

/** Names of the days, Monday first, short. */
export function dayName(day: number): string {
  return DAY_LETTERS[day] ?? '';
}
