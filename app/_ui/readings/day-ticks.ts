import { addDays } from '#core/time/add-days';
import { daysBetween } from '#core/time/days';
import { instantOf, wallClock } from '#core/time/zone';

/** One mark on an axis of days. */
export interface DayTick {
  atMs: number;
  label: string;
  /** A second line: the day, where hours stand above. */
  below?: string;
}

/** Hours between marks of a day, and days between marks of more. */
const HOURS = [1, 2, 3, 4, 6, 12];
const DAYS = [1, 2, 5, 7, 10, 14];
const DAY_NAMES = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
/** 1970-01-05 was a Monday (ISO 8601). */
const A_MONDAY = '1970-01-05';

/**
 * Round hours or days of a place, for an axis that begins and ends with a day there.
 *
 * @param fromMs   ms since 1970
 * @param zone     IANA zone
 * @param most     how many marks fit
 */
export function dayTicks(fromMs: number, toMs: number, zone: string, most: number): DayTick[] {
  const first = wallClock(zone, fromMs).date;
  const days = daysBetween(first, wallClock(zone, toMs - 1).date) + 1;
  if (days === 1) return hourTicks(first, zone, HOURS.find((step) => 24 / step <= most) ?? 12, toMs);
  const step = DAYS.find((count) => days / count <= most) ?? 14;
  return Array.from({ length: Math.ceil(days / step) }, (_, i) => {
    const date = addDays(first, i * step);
    return {
      atMs: instantOf(zone, date, '00:00'),
      label: daySaid(date),
      ...(step === 1 ? { below: dayName(date) } : {}),
    };
  });
}

function hourTicks(date: string, zone: string, step: number, toMs: number): DayTick[] {
  const hours = Array.from({ length: Math.ceil(24 / step) }, (_, i) => `${String(i * step).padStart(2, '0')}:00`);
  const ticks = hours.map((label, i) => ({
    atMs: instantOf(zone, date, label),
    label,
    ...(i === 0 ? { below: `${dayName(date)} ${daySaid(date)}` } : {}),
  }));
  return [...ticks, { atMs: toMs, label: '24:00' }];
}

function daySaid(date: string): string {
  return `${Number(date.slice(8))} ${MONTHS[Number(date.slice(5, 7)) - 1] ?? ''}`;
}

function dayName(date: string): string {
  return DAY_NAMES[((daysBetween(A_MONDAY, date) % 7) + 7) % 7] ?? '';
}
