import { Temporal } from 'temporal-polyfill';
import { addDays } from './add-days';

/** A moment: whole milliseconds since 1970-01-01T00:00Z, below 0 before. */
export type Instant = number;

/** What a clock on the wall of a place shows. */
export interface WallClock {
  /** "YYYY-MM-DD" */
  readonly date: string;
  /** "HH:MM"; seconds are left off. */
  readonly time: string;
  /** Difference from UTC, "+01:00"; tells the two passes through a repeated hour apart. */
  readonly offset: string;
}

const MINUTE_MS = 60_000;

/**
 * The moment at which the clocks of a place show a date and a time.
 * A time that the clocks leap over is put off by the length of the leap, and of a time that they show twice the first is
 * meant; none is ever dropped. Source: RFC 5545 section 3.3.5 (the offset before the gap; the first of two).
 * @param zone IANA zone, "Europe/London"
 * @param date "YYYY-MM-DD"
 * @param time "HH:MM"
 * @returns the moment
 * @throws RangeError when there is no such zone, date or time
 */
export function instantOf(zone: string, date: string, time: string): Instant {
  return local(date, time).toZonedDateTime(zone, { disambiguation: 'compatible' }).epochMilliseconds;
}

/**
 * Every moment at which the clocks of a place show a date and a time, earliest first: two in an hour that is repeated.
 * A time that is leapt over gives the one moment of `instantOf`.
 * @param zone IANA zone
 * @param date "YYYY-MM-DD"
 * @param time "HH:MM"
 * @returns one or two moments
 * @throws RangeError when there is no such zone, date or time
 */
export function instantsOf(zone: string, date: string, time: string): Instant[] {
  const first = local(date, time).toZonedDateTime(zone, { disambiguation: 'earlier' });
  const last = local(date, time).toZonedDateTime(zone, { disambiguation: 'later' });
  const isRepeated =
    first.epochMilliseconds < last.epochMilliseconds && first.toPlainDateTime().equals(last.toPlainDateTime());
  return isRepeated ? [first.epochMilliseconds, last.epochMilliseconds] : [instantOf(zone, date, time)];
}

/** 1973-01-01: from then on every place is whole minutes from UTC, so that its clocks show one thing within a minute. */
const WHOLE_MINUTES_MS = 1096 * 1440 * MINUTE_MS;
/** Minutes whose clocks are remembered: a page of many sites asks for a few of them again and again. */
const MOST_CLOCKS = 500;
const clocks = new Map<string, WallClock>();

/**
 * What the clocks of a place show at a moment.
 * @param zone IANA zone
 * @throws RangeError when there is no such zone
 */
export function wallClock(zone: string, instant: Instant): WallClock {
  if (instant < WHOLE_MINUTES_MS) return lookedUp(zone, instant);
  const minute = `${zone} ${Math.floor(instant / MINUTE_MS)}`;
  const known = clocks.get(minute);
  if (known) return known;
  const clock = lookedUp(zone, instant);
  if (clocks.size >= MOST_CLOCKS) clocks.clear();
  clocks.set(minute, clock);
  return clock;
}

function lookedUp(zone: string, instant: Instant): WallClock {
  const there = Temporal.Instant.fromEpochMilliseconds(instant).toZonedDateTimeISO(zone);
  return Object.freeze({
    date: there.toPlainDate().toString(),
    time: there.toPlainTime().toString({ smallestUnit: 'minute', roundingMode: 'floor' }),
    offset: there.offset,
  });
}

/**
 * The moment at which a calendar day begins at a place, which is not 00:00 where the clocks leap at midnight.
 * @param zone IANA zone
 * @param date "YYYY-MM-DD"
 * @throws RangeError when there is no such zone or date
 */
export function dayStart(zone: string, date: string): Instant {
  return Temporal.PlainDate.from(date).toZonedDateTime(zone).epochMilliseconds;
}

/**
 * How long a calendar day lasts at a place: 1440 minutes, but when the clocks change.
 * @param zone IANA zone
 * @param date "YYYY-MM-DD"
 * @returns min; 0 for a day that the place left out of its calendar
 * @throws RangeError when there is no such zone or date
 */
export function dayLengthMin(zone: string, date: string): number {
  return (dayStart(zone, addDays(date, 1)) - dayStart(zone, date)) / MINUTE_MS;
}

function local(date: string, time: string): Temporal.PlainDateTime {
  return Temporal.PlainDateTime.from(`${date}T${time}`);
}
