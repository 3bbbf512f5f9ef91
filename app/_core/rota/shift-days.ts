import { addDays } from '../time/add-days';
import { dayOf } from '../time/day-of';
import { dayNumber } from '../time/days';
import { occurrences, readRecurrence } from '../time/recurrence';
import { ok, refused, type Result } from '../result';
import { dayStart, wallClock } from '../time/zone';
import type { Shift } from './rota';

/** What of a shift says on which days it begins. */
export type ShiftDays = Pick<Shift, 'days' | 'everyWeeks' | 'rule' | 'starts' | 'ends' | 'except'>;

/** 1970-01-01, from which days are counted, was a Thursday: three days after Monday. */
const FIRST_DAY = 3;
/** A rule is read by the day alone; noon in UTC is far from either end of it. */
const NOON = '12:00';

/**
 * The days on which a shift begins.
 * @param from first day, "YYYY-MM-DD"
 * @param to the day after the last one, "YYYY-MM-DD"
 * @returns days in order; none when its rule is not sound, which `shiftRule` says beforehand
 * @throws RangeError when there is no such day
 */
export function shiftDays(shift: ShiftDays, from: string, to: string): string[] {
  const first = shift.starts !== undefined && shift.starts > from ? shift.starts : from;
  const after = shift.ends !== undefined && shift.ends < to ? addDays(shift.ends, 1) : to;
  const ruled = daysOfRule(shift, first, after);
  const found: string[] = [];
  for (let date = first; date < after; date = addDays(date, 1)) {
    if (!shift.days.includes(dayOf(date)) || !isItsWeek(shift, date)) continue;
    if (shift.except?.some(({ on }) => on === date) || (ruled && !ruled.has(date))) continue;
    found.push(date);
  }
  return found;
}

/**
 * Whether the rule of a shift can be read, from its first day on.
 * @returns nothing, or a sentence for each fault
 */
export function shiftRule({ rule, starts }: Pick<Shift, 'rule' | 'starts'>): Result<null, string[]> {
  if (rule === undefined) return ok(null);
  if (starts === undefined) return refused(['A rule is counted from a first day, and there is none.']);
  if (/BYHOUR|BYMINUTE/.test(rule))
    return refused(['BYHOUR and BYMINUTE say times; a shift has its own, and a rule says days alone.']);
  const read = readRecurrence({ rule, start: { date: starts, time: NOON }, zone: 'UTC' });
  return read.ok ? ok(null) : read;
}

function daysOfRule({ rule, starts }: ShiftDays, from: string, to: string): Set<string> | null {
  if (rule === undefined) return null;
  if (starts === undefined || !shiftRule({ rule, starts }).ok) return new Set();
  const read = readRecurrence({ rule, start: { date: starts, time: NOON }, zone: 'UTC' });
  if (!read.ok || from >= to) return new Set();
  const times = occurrences(read.value, dayStart('UTC', from), dayStart('UTC', to));
  return new Set(times.map((at) => wallClock('UTC', at).date));
}

function isItsWeek({ everyWeeks = 1, starts }: ShiftDays, date: string): boolean {
  return everyWeeks <= 1 || starts === undefined || mod(weekOf(date) - weekOf(starts), everyWeeks) === 0;
}

/** Weeks, Monday first (ISO 8601), counted through. */
function weekOf(date: string): number {
  return Math.floor((dayNumber(date) + FIRST_DAY) / 7);
}

function mod(value: number, by: number): number {
  return ((value % by) + by) % by;
}
