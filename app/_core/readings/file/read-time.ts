import { dayNumber } from '../../time/days';
import type { DateOrder, TimeLayout } from './layout';

/** What a row says of its time: a moment, or what a clock on the wall showed. */
export type RowTime =
  | { atMs: number }
  | {
      /** Days since 1970-01-01. */
      day: number;
      /** ms since 00:00 on the wall; 0 when there is no time of day. */
      dayMs: number;
      hasClock: boolean;
    };

/** The parts of a date as they stand, before it is known which is which, and of a time of day. */
export interface DateParts {
  parts: [string, string, string];
  /** What the letters alone decide of the order: a year of four digits, a month by its name. */
  orders: readonly DateOrder[];
  dayMs: number;
  hasClock: boolean;
  /** Difference from UTC that stands beside it, min. */
  offsetMin?: number;
}

const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];
const CLOCK = String.raw`(\d{1,2})[:h](\d{2})(?::(\d{2})(?:[.,](\d{1,9}))?)?\s*([ap]\.?m\.?)?`;
const OFFSET = String.raw`(?:\s*(Z|UTC|GMT|[+-]\d{2}(?::?\d{2})?))?`;
const DATE = String.raw`(\d{1,4}|[a-z]{3,9})\.?[-/. ]\s*(\d{1,2}|[a-z]{3,9})\.?,?[-/. ]\s*(\d{1,4})`;
const DATED = new RegExp(`^${DATE}(?:(?:T|,?\\s+)${CLOCK}${OFFSET})?$`, 'i');
const COMPACT = /^((?:19|20)\d{2})(\d{2})(\d{2})(?:[T ]?(\d{2})(\d{2})(\d{2})?)?(Z)?$/;
const ALONE = new RegExp(`^${CLOCK}${OFFSET}$`, 'i');

/** Characters of the longest date with its time and zone, and blanks to spare: what is longer is no date, and not looked through. */
const LONGEST = 80;

/** Takes a date apart, with its time of day if that stands beside it. @returns null when it is none */
export function takeApart(text: string): DateParts | null {
  if (text.length > LONGEST) return null;
  const compact = COMPACT.exec(text);
  if (compact) return compactParts(compact);
  const found = DATED.exec(text);
  if (!found) return null;
  const [, first = '', second = '', third = '', ...clock] = found;
  const dayMs = clock[0] === undefined ? 0 : clockMs(clock);
  if (dayMs === null) return null;
  const orders = ordersOf(first, second, third);
  if (orders.length === 0) return null;
  const offsetMin = offsetOf(clock[5]);
  const parts: DateParts['parts'] = [numbered(first), numbered(second), third];
  return { parts, orders, dayMs, hasClock: clock[0] !== undefined, ...(offsetMin === null ? {} : { offsetMin }) };
}

/** The time of day in a column of its own, ms since 00:00; null when it is none. */
export function readClock(text: string): number | null {
  const found = text.length > LONGEST ? null : ALONE.exec(text);
  return found ? clockMs(found.slice(1)) : null;
}

/** The day that three parts of a date mean in an order, days since 1970; null when there is no such day. */
export function dayOf(parts: DateParts['parts'], order: DateOrder): number | null {
  const [y, m, d] =
    order === 'ymd' ? parts : order === 'dmy' ? [parts[2], parts[1], parts[0]] : [parts[2], parts[0], parts[1]];
  return dayFrom(yearOf(y), Number(m), Number(d));
}

/**
 * The time of a row.
 *
 * @param cells   of the row
 * @returns       null when what stands there is no time
 */
export function readTime(cells: readonly string[], time: TimeLayout): RowTime | null {
  switch (time.as) {
    case 'epoch':
      return epochOf(cells[time.column] ?? '', time.unit);
    case 'parts':
      return partsTime(time.columns.map((place) => cells[place] ?? ''));
    case 'text':
      return textTime(
        cells[time.date] ?? '',
        time.clock === undefined ? undefined : (cells[time.clock] ?? ''),
        time.order,
      );
  }
}

function textTime(date: string, clock: string | undefined, order: DateOrder | null): RowTime | null {
  const apart = takeApart(date);
  if (!apart) return null;
  const day = dayOf(apart.parts, apart.orders.length === 1 ? (apart.orders[0] ?? 'ymd') : (order ?? 'ymd'));
  if (day === null || (apart.orders.length > 1 && (order === null || !apart.orders.includes(order)))) return null;
  const dayMs = clock === undefined || clock === '' ? apart.dayMs : readClock(clock);
  if (dayMs === null) return null;
  if (apart.offsetMin !== undefined) return { atMs: day * 86_400_000 + dayMs - apart.offsetMin * 60_000 };
  return { day, dayMs, hasClock: apart.hasClock || (clock !== undefined && clock !== '') };
}

function partsTime(parts: readonly string[]): RowTime | null {
  if (!parts.every((part) => /^\d{1,4}$/.test(part))) return null;
  const [year = '', month, date, hour = 0, minute = 0, second = 0, ...more] = parts;
  const day = dayFrom(yearOf(year), Number(month), Number(date));
  const [h, m, s] = [Number(hour), Number(minute), Number(second)];
  if (day === null || more.length > 0 || h > 24 || m > 59 || s > 60) return null;
  return { day, dayMs: ((h * 60 + m) * 60 + s) * 1000, hasClock: parts.length > 3 };
}

function epochOf(text: string, unit: 's' | 'ms'): RowTime | null {
  if (!/^\+?\d{1,14}([.,]\d+)?$/.test(text)) return null;
  const count = Number(text.replace(',', '.'));
  return { atMs: Math.round(unit === 's' ? count * 1000 : count) };
}

function compactParts([
  ,
  y = '',
  m = '',
  d = '',
  hour,
  minute = '0',
  second = '0',
  zulu,
]: RegExpExecArray): DateParts | null {
  const dayMs = hour === undefined ? 0 : clockMs([hour, minute, second]);
  if (dayMs === null) return null;
  return { parts: [y, m, d], orders: ['ymd'], dayMs, hasClock: hour !== undefined, ...(zulu ? { offsetMin: 0 } : {}) };
}

/** Orders in which three parts of a date can be meant by their letters; the days of the month are not looked at. */
function ordersOf(first: string, second: string, third: string): DateOrder[] {
  const isMonth = (part: string) => /[a-z]/i.test(part);
  if (isMonth(first)) return monthOf(first) && !isMonth(second) ? ['mdy'] : [];
  if (isMonth(second)) return monthOf(second) ? [first.length === 4 ? 'ymd' : 'dmy'] : [];
  if (first.length >= 3) return first.length === 4 && third.length < 3 ? ['ymd'] : [];
  if (third.length === 3) return [];
  return third.length === 4 ? ['dmy', 'mdy'] : ['ymd', 'dmy', 'mdy'];
}

function numbered(part: string): string {
  return String(monthOf(part) || part);
}

function monthOf(name: string): number {
  return MONTHS.indexOf(name.slice(0, 3).toLowerCase()) + 1;
}

/** Two digits: 69 to 99 are of the last century (POSIX `strptime`, %y). */
function yearOf(text: string): number {
  const year = Number(text);
  return text.length > 2 ? year : year + (year >= 69 ? 1900 : 2000);
}

const LENGTHS = [31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

function dayFrom(year: number, month: number, date: number): number | null {
  const length = LENGTHS[month - 1];
  if (length === undefined || date < 1 || date > length || !(year >= 1900 && year <= 2200)) return null;
  const isLeap = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
  if (month === 2 && date === 29 && !isLeap) return null;
  return dayNumber(`${year}-${month}-${date}`);
}

/** Hour, minute, second, part of a second, morning or afternoon; ms since 00:00, null when there is no such time. */
function clockMs([hour = '', minute = '', second = '0', part = '', half = '']: readonly (string | undefined)[]):
  | number
  | null {
  let h = Number(hour);
  if (half !== '') {
    if (h < 1 || h > 12) return null;
    h = (h % 12) + (half.toLowerCase().startsWith('p') ? 12 : 0);
  }
  const [m, s] = [Number(minute), Number(second)];
  if (h > 24 || m > 59 || s > 60 || (h === 24 && m + s > 0)) return null;
  return ((h * 60 + m) * 60 + s) * 1000 + (part === '' ? 0 : Math.floor(Number(`0.${part}`) * 1000));
}

function offsetOf(text: string | undefined): number | null {
  if (text === undefined) return null;
  const found = /^([+-])(\d{2}):?(\d{2})?$/.exec(text);
  if (!found) return 0;
  const minutes = Number(found[2]) * 60 + Number(found[3] ?? 0);
  return found[1] === '-' ? -minutes : minutes;
}
