import { DAYS, type Day } from '../facility/site';
import { readRuleParts } from '../time/rule-parts';

/** A rule as people say it. What a plain rule cannot say is kept as its text. */
export type PlainRule =
  | { is: 'days'; every: number }
  | { is: 'weeks'; every: number; on: Day[] }
  /** The `nth` of a weekday, 1 to 4, or -1 for the last, of every so many months. */
  | { is: 'months-weekday'; every: number; nth: number; on: Day }
  /** A day of the month, 1 to 28, or -1 for the last. */
  | { is: 'months-day'; every: number; day: number };

const CODES: Record<Day, string> = { mon: 'MO', tue: 'TU', wed: 'WE', thu: 'TH', fri: 'FR', sat: 'SA', sun: 'SU' };
const DAY_WORDS: Record<Day, string> = {
  mon: 'Monday',
  tue: 'Tuesday',
  wed: 'Wednesday',
  thu: 'Thursday',
  fri: 'Friday',
  sat: 'Saturday',
  sun: 'Sunday',
};
const NTH_WORDS: Record<string, string> = { '1': 'first', '2': 'second', '3': 'third', '4': 'fourth', '-1': 'last' };

/** The text of a plain rule, in the form of RFC 5545. */
export function ruleOf(plain: PlainRule): string {
  const interval = plain.every === 1 ? '' : `;INTERVAL=${plain.every}`;
  switch (plain.is) {
    case 'days':
      return `FREQ=DAILY${interval}`;
    case 'weeks':
      return `FREQ=WEEKLY${interval};BYDAY=${DAYS.filter((day) => plain.on.includes(day))
        .map((day) => CODES[day])
        .join(',')}`;
    case 'months-weekday':
      return `FREQ=MONTHLY${interval};BYDAY=${plain.nth}${CODES[plain.on]}`;
    case 'months-day':
      return `FREQ=MONTHLY${interval};BYMONTHDAY=${plain.day}`;
  }
}

/** A rule in the plain form; null for one that has more to it. */
export function plainOf(rule: string): PlainRule | null {
  const read = readRuleParts(rule);
  if (!read.ok) return null;
  const { FREQ, INTERVAL, BYDAY, BYMONTHDAY, WKST: _, ...more } = read.value;
  if (Object.keys(more).length > 0) return null;
  const every = Number(INTERVAL ?? 1);
  if (FREQ === 'DAILY') return BYDAY === undefined && BYMONTHDAY === undefined ? { is: 'days', every } : null;
  if (FREQ === 'WEEKLY' && BYDAY !== undefined) return { is: 'weeks', every, on: BYDAY.split(',').flatMap(dayOfCode) };
  if (FREQ !== 'MONTHLY') return null;
  if (BYDAY !== undefined && BYMONTHDAY === undefined) {
    const nth = Number(BYDAY.slice(0, -2));
    const [on] = dayOfCode(BYDAY.slice(-2));
    return on && String(nth) in NTH_WORDS ? { is: 'months-weekday', every, nth, on } : null;
  }
  const day = Number(BYMONTHDAY);
  const isPlain = BYDAY === undefined && (day === -1 || (day >= 1 && day <= 28));
  return isPlain ? { is: 'months-day', every, day } : null;
}

/** A rule in words: "every Monday and Thursday", "the first Friday of every third month". */
export function ruleSaid(rule: string): string {
  const plain = plainOf(rule);
  if (!plain) return `by the rule ${rule}`;
  const { every } = plain;
  switch (plain.is) {
    case 'days':
      return every === 1 ? 'every day' : `every ${every} days`;
    case 'weeks': {
      if (plain.on.length === 7 && every === 1) return 'every day';
      const days = listed(plain.on.map((day) => DAY_WORDS[day]));
      return every === 1 ? `every ${days}` : `${days} of every ${ordinal(every)} week`;
    }
    case 'months-weekday':
      return `the ${NTH_WORDS[String(plain.nth)]} ${DAY_WORDS[plain.on]} of ${monthSaid(every)}`;
    case 'months-day':
      return plain.day === -1 ? `the last day of ${monthSaid(every)}` : `day ${plain.day} of ${monthSaid(every)}`;
  }
}

function dayOfCode(code: string): Day[] {
  return DAYS.filter((day) => CODES[day] === code);
}

function monthSaid(every: number): string {
  return every === 1 ? 'every month' : `every ${ordinal(every)} month`;
}

function ordinal(value: number): string {
  const tail = value % 100 >= 11 && value % 100 <= 13 ? 'th' : (['th', 'st', 'nd', 'rd'][value % 10] ?? 'th');
  return value === 2 ? 'second' : value === 3 ? 'third' : `${value}${tail}`;
}

function listed(words: readonly string[]): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}
