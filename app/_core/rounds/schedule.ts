import type { OpeningHours, Site } from '../facility/site';
import { ok, type Result, refused } from '../result';
import { addDays } from '../time/add-days';
import { dayOf } from '../time/day-of';
import { occurrences, type Recurrence, readRecurrence } from '../time/recurrence';
import { dayLengthMin, dayStart, type Instant, instantOf } from '../time/zone';

/** A time of the day: on the clock, or so long after the site opens or closes. */
export interface DueTime {
  /** "HH:MM"; with an anchor the time on days on which the site does not open. */
  at: string;
  anchor?: 'opening' | 'closing';
  /** Minutes after the anchor, below 0 for before it. */
  afterMin?: number;
}

/** When a sheet is due, on the clocks of its site. */
export interface Schedule {
  /** Rule of RFC 5545 for its days, without its name: "FREQ=MONTHLY;BYDAY=1FR". Times of the day stand apart. */
  rule: string;
  /** First day of the rule, ISO date (DTSTART). */
  from: string;
  /** Last day, ISO date; left out for ever. */
  until?: string;
  times: DueTime[];
  /** Days of the rule that are left out, ISO dates (EXDATE). */
  except?: string[];
  /** Whether the site's holidays are left out; else they are walked as any day. */
  notOnHolidays?: true;
}

/** What of a site a schedule is read with. */
export interface SiteDays {
  zone: string;
  hours: readonly OpeningHours[];
  /** ISO dates. */
  holidays: readonly string[];
}

/** What of a site a schedule is read with. */
export function siteDays({ zone, openingHours, holidays }: Site): SiteDays {
  return { zone, hours: openingHours ?? [], holidays: (holidays ?? []).map(({ on }) => on) };
}

const MINUTE_MS = 60_000;
const APART = ['BYHOUR', 'BYMINUTE', 'UNTIL'];
/** The days of a rule are read at noon in UTC, where no clock leaps. */
const NOON = { time: '12:00', zone: 'UTC' };

/**
 * Holds a schedule to its rules.
 * @returns its recurrence in days, or a sentence for each fault
 */
export function readSchedule({ rule, from, until, times }: Schedule): Result<Recurrence, string[]> {
  const apart = rule.split(';').filter((part) => APART.some((name) => part.startsWith(`${name}=`)));
  if (apart.length > 0)
    return refused([`${apart.join(', ')}: times of the day and the last day stand beside the rule.`]);
  if (times.length === 0) return refused(['It is due at no time of the day.']);
  if (until !== undefined && until < from) return refused(['Its last day lies before its first.']);
  const read = readRecurrence({ rule, start: { date: from, time: NOON.time }, zone: NOON.zone });
  return read.ok ? ok(read.value) : read;
}

/**
 * The days on which a schedule is due, ISO dates in order.
 * @param from   first day that counts
 * @param to     the day after the last
 * @throws RangeError when the schedule is not sound
 */
export function dueDays(schedule: Schedule, site: SiteDays, from: string, to: string): string[] {
  const read = readSchedule(schedule);
  if (!read.ok) throw new RangeError(read.reason.join(' '));
  const noon = (date: string) => instantOf(NOON.zone, date, NOON.time);
  const left = new Set([...(schedule.except ?? []), ...(schedule.notOnHolidays ? site.holidays : [])]);
  const dayMs = 24 * 60 * MINUTE_MS;
  return (
    occurrences(read.value, noon(from), noon(to))
      .map((at) => addDays('1970-01-01', Math.floor(at / dayMs)))
      .filter((date) => !left.has(date) && (schedule.until === undefined || date <= schedule.until))
      // A day that the place left out of its calendar has none; put off, they would come twice on the next.
      .filter((date) => dayLengthMin(site.zone, date) > 0)
  );
}

/**
 * The times of a schedule on a day, in order. A time that the clocks leap over is put off by the leap, one that they show twice
 * is meant once, at first, and two that fall together are one.
 */
export function timesOn({ times }: Schedule, site: SiteDays, date: string): Instant[] {
  return [...new Set(times.map((time) => timeOn(time, site, date)))].sort((a, b) => a - b);
}

function timeOn({ at, anchor, afterMin = 0 }: DueTime, { zone, hours }: SiteDays, date: string): Instant {
  const open = hours.find(({ days }) => days.includes(dayOf(date)));
  if (anchor === undefined || open === undefined) return instantOf(zone, date, at);
  const opens = instantOf(zone, date, open.opens);
  if (anchor === 'opening') return opens + afterMin * MINUTE_MS;
  // A site that closes at or before the hour at which it opens closes on the next day.
  const closingDay = open.closes > open.opens ? date : addDays(date, 1);
  return instantOf(zone, closingDay, open.closes) + afterMin * MINUTE_MS;
}

/** The end of a day at a place. */
export function dayEnd(zone: string, date: string): Instant {
  return dayStart(zone, addDays(date, 1));
}
