import ICAL from 'ical.js';
import { DateTime } from 'luxon';
import rrule from 'rrule';

/** Wall-clock times of a rule, "YYYY-MM-DDTHH:MM", as two libraries read it that have nothing in common with ours or each other. */
export interface OutsideTimes {
  rrule: string[];
  ical: string[];
}

/**
 * The times of a rule by `rrule` and by `ical.js`, both on floating time.
 * @param start   "YYYY-MM-DDTHH:MM"
 * @param to      no time on or after this is told
 */
export function outsideTimes(rule: string, start: string, to: string): OutsideTimes {
  const end = DateTime.fromISO(to, { zone: 'utc' });
  const theirs = new rrule.RRule({
    ...rrule.RRule.parseString(rule),
    dtstart: DateTime.fromISO(start, { zone: 'utc' }).toJSDate(),
  });
  const times = theirs.between(new Date(0), end.minus({ minute: 1 }).toJSDate(), true);
  const iterator = ICAL.Recur.fromString(rule).iterator(ICAL.Time.fromDateTimeString(`${start}:00`));
  const ical: string[] = [];
  for (let next = iterator.next(); next; next = iterator.next()) {
    const at = next.toString().slice(0, 16);
    if (at >= to) break;
    ical.push(at);
  }
  return { rrule: times.map((at) => at.toISOString().slice(0, 16)), ical };
}

/** The moment of a wall-clock time by luxon: put off by a leap, the first of two. @returns ms since 1970 */
export function outsideInstant(zone: string, wall: string): number {
  const there = DateTime.fromISO(wall, { zone });
  return Math.min(...there.getPossibleOffsets().map((one) => one.toMillis()));
}
