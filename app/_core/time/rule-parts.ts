import { type Result, refused, ok } from '../result';

/** The parts of a recurrence rule that are understood, by their names in RFC 5545 section 3.3.10. */
export interface RuleParts {
  FREQ: (typeof FREQUENCIES)[number];
  INTERVAL?: string;
  COUNT?: string;
  UNTIL?: string;
  WKST?: string;
  BYMONTH?: string;
  BYMONTHDAY?: string;
  BYDAY?: string;
  BYHOUR?: string;
  BYMINUTE?: string;
  BYSETPOS?: string;
}

const FREQUENCIES = ['DAILY', 'WEEKLY', 'MONTHLY', 'YEARLY'] as const;
const SHORTER = ['HOURLY', 'MINUTELY', 'SECONDLY'];
const WEEKDAY = /^(MO|TU|WE|TH|FR|SA|SU)$/;
const LISTS = ['BYMONTH', 'BYMONTHDAY', 'BYDAY', 'BYHOUR', 'BYMINUTE'] as const;

const between = (low: number, high: number) => (word: string) =>
  /^\d{1,4}$/.test(word) && Number(word) >= low && Number(word) <= high;
const aroundZero = (high: number) => (word: string) => between(1, high)(word.replace(/^[+-]/, ''));
const isDay = (word: string) =>
  WEEKDAY.test(word.slice(-2)) && (word.length === 2 || aroundZero(53)(word.slice(0, -2)));

/** What each part may hold: one word, or for a list each of its words. */
const VALUES: Record<keyof Omit<RuleParts, 'FREQ'>, { of: (word: string) => boolean; want: string }> = {
  INTERVAL: { of: between(1, 9999), want: 'a whole number from 1 on' },
  COUNT: { of: between(1, 9999), want: 'a whole number from 1 on' },
  UNTIL: { of: (word) => /^\d{8}T\d{6}Z$/.test(word), want: 'a moment in UTC, written 20261231T235959Z' },
  WKST: { of: (word) => WEEKDAY.test(word), want: 'a day of the week, MO to SU' },
  BYMONTH: { of: between(1, 12), want: 'months, 1 to 12' },
  BYMONTHDAY: { of: aroundZero(31), want: 'days of the month, 1 to 31, or -1 to -31 from its end' },
  BYDAY: { of: isDay, want: 'days of the week, MO to SU, or the one or other of them, as 1FR or -1SU' },
  BYHOUR: { of: between(0, 23), want: 'hours, 0 to 23' },
  BYMINUTE: { of: between(0, 59), want: 'minutes, 0 to 59' },
  BYSETPOS: { of: aroundZero(366), want: 'places in a period, 1 to 366, or -1 to -366 from its end' },
};

/**
 * The parts of a recurrence rule: the daily, weekly, monthly and yearly ones of RFC 5545, by month, day, hour and minute.
 * @param rule as in RFC 5545, without its name: "FREQ=MONTHLY;BYDAY=1FR"
 * @returns the parts, or a sentence for each fault
 */
export function readRuleParts(rule: string): Result<RuleParts, string[]> {
  const pairs = rule.split(';').map(splitPart);
  const names = pairs.map(([name]) => name);
  const faults = pairs.flatMap(([name, value]) => faultsOfPart(name, value));
  for (const name of new Set(names))
    if (names.filter((other) => other === name).length > 1) faults.push(`${name} stands twice.`);
  if (!names.includes('FREQ')) faults.push('FREQ is missing: DAILY, WEEKLY, MONTHLY or YEARLY.');
  const frequency = FREQUENCIES.find((known) => pairs.some(([name, value]) => name === 'FREQ' && value === known));
  if (faults.length > 0 || frequency === undefined) return refused(faults);
  const parts: RuleParts = { ...Object.fromEntries(pairs), FREQ: frequency };
  const together = faultsTogether(parts);
  return together.length > 0 ? refused(together) : ok(parts);
}

function splitPart(part: string): [name: string, value: string] {
  const [name = '', ...values] = part.split('=');
  return [name, values.join('=')];
}

function faultsOfPart(name: string, value: string): string[] {
  if (name === 'FREQ') {
    if (FREQUENCIES.some((known) => known === value)) return [];
    return SHORTER.includes(value)
      ? [`FREQ=${value} is not a rule on the wall clock: every so many hours or minutes is elapsed time.`]
      : [`FREQ=${value} is none of DAILY, WEEKLY, MONTHLY and YEARLY.`];
  }
  const wanted = Object.entries(VALUES).find(([known]) => known === name)?.[1];
  if (!wanted) return [`${name || 'An empty part'} is not understood here.`];
  const words = name.startsWith('BY') ? value.split(',') : [value];
  return words.every(wanted.of) ? [] : [`${name}=${value} is not what it should be: ${wanted.want}.`];
}

function faultsTogether(parts: RuleParts): string[] {
  const faults: string[] = [];
  const isLong = parts.FREQ === 'MONTHLY' || parts.FREQ === 'YEARLY';
  if (parts.COUNT !== undefined && parts.UNTIL !== undefined)
    faults.push('UNTIL and COUNT may not stand together: a rule ends by a moment or after a number of times.');
  if (/\d/.test(parts.BYDAY ?? '') && !isLong)
    faults.push(`BYDAY=${parts.BYDAY}: the one or other day of the week may be meant only with MONTHLY and YEARLY.`);
  if (parts.FREQ === 'MONTHLY' && /[6-9]|\d\d/.test(parts.BYDAY ?? ''))
    faults.push(`BYDAY=${parts.BYDAY}: no day of the week comes more than five times a month.`);
  if (parts.BYMONTHDAY !== undefined && parts.FREQ === 'WEEKLY')
    faults.push('BYMONTHDAY may not stand with FREQ=WEEKLY.');
  if (parts.BYSETPOS !== undefined && !LISTS.some((name) => parts[name] !== undefined))
    faults.push('BYSETPOS picks from what another BY part names, and there is none.');
  return faults;
}
