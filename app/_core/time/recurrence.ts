import { RRuleTemporal } from 'rrule-temporal';
import { ok, type Result, refused } from '../result';
import { addDays } from './add-days';
import { dayNumber } from './days';
import { type RuleParts, readRuleParts } from './rule-parts';
import { type Instant, instantOf } from './zone';

/** What is to recur on the clocks of a place. */
export interface RecurrenceGiven {
  /** Rule of RFC 5545, without its name: "FREQ=WEEKLY;BYDAY=MO,TH". */
  rule: string;
  /** The first time, on the clocks of the place: "YYYY-MM-DD" and "HH:MM". */
  start: { date: string; time: string };
  /** IANA zone. */
  zone: string;
}

/** A recurrence that was found sound by `readRecurrence`. */
export interface Recurrence extends RecurrenceGiven {
  parts: RuleParts;
}

const DAY_MS = 86_400_000;
const MINUTE_MS = 60_000;
/** Periods the library may go through for one question: the days of five centuries. */
const MOST_PERIODS = 200_000;
/** No place is further from UTC than a day; what the clocks show is sought that much wider. */
const WIDER_MS = 2 * DAY_MS;

/**
 * Holds a recurrence to the rules of RFC 5545 (sections 3.3.10 and 3.8.5.3), and its start to its rule: a start that is no
 * time of the rule is undefined there, and refused here.
 * @returns the recurrence, or a sentence for each fault
 */
export function readRecurrence(given: RecurrenceGiven): Result<Recurrence, string[]> {
  const { rule, start, zone } = given;
  let first: Instant;
  try {
    first = instantOf(zone, start.date, start.time);
  } catch {
    return refused([`There is no ${start.date} ${start.time} in ${zone}.`]);
  }
  const read = readRuleParts(rule);
  if (!read.ok) return read;
  const recurrence = { ...given, parts: read.value };
  const wall = wallMs(start.date, start.time);
  if (wallTimes(recurrence, wall, wall).length === 0)
    return refused([`The start, ${start.date} ${start.time}, is not a time of the rule ${rule}.`]);
  const until = untilOf(read.value);
  if (Number.isNaN(until)) return refused([`UNTIL=${read.value.UNTIL} is no moment of the calendar.`]);
  return until < first ? refused(['UNTIL lies before the start.']) : ok(recurrence);
}

/**
 * The times of a recurrence within a stretch of time. The rule is read on the wall clock; a time that the clocks leap over
 * is put off by the length of the leap, a time that they show twice is meant once, at first (`instantOf`), and so none is
 * dropped and none comes twice.
 * @param from first moment that counts
 * @param to first moment that no longer counts
 * @returns moments in order
 */
export function occurrences(recurrence: Recurrence, from: Instant, to: Instant): Instant[] {
  const until = untilOf(recurrence.parts);
  const instants = wallTimes(recurrence, from - WIDER_MS, Math.min(to, until) + WIDER_MS)
    .map((wall) => instantAt(recurrence.zone, wall))
    .filter((at) => at >= from && at < to && at <= until);
  return [...new Set(instants)].sort((a, b) => a - b);
}

/**
 * The times of a rule on the wall clock, both ends counting, each in ms as if it were UTC. The library is never told of the
 * zone: it leaves out a time that the clocks leap over, as one of two paragraphs of RFC 5545 has it, and nothing that keeps
 * animals alive may be left out.
 */
function wallTimes({ parts, start }: Recurrence, from: number, to: number): number[] {
  const { UNTIL: _, ...rest } = parts;
  const words = Object.entries(rest).map(([name, value]) => `${name}=${value}`);
  const stamp = `${start.date}T${start.time}00Z`.replace(/[-:]/g, '');
  const rule = new RRuleTemporal({
    rruleString: `DTSTART:${stamp}\nRRULE:${words.join(';')}`,
    strict: true,
    maxIterations: MOST_PERIODS,
  });
  return rule.between(moment(from), moment(to), true).map(({ epochMilliseconds }) => epochMilliseconds);
}

/** A moment in the form in which the library takes it. */
function moment(ms: number): { timeZoneId: string; toString(): string } {
  const { date, time } = split(ms);
  return { timeZoneId: 'UTC', toString: () => `${date}T${time}:00+00:00[UTC]` };
}

function instantAt(zone: string, wall: number): Instant {
  const { date, time } = split(wall);
  return instantOf(zone, date, time);
}

function split(ms: number): { date: string; time: string } {
  const days = Math.floor(ms / DAY_MS);
  const minutes = Math.floor((ms - days * DAY_MS) / MINUTE_MS);
  const two = (value: number) => String(value).padStart(2, '0');
  return { date: addDays('1970-01-01', days), time: `${two(Math.floor(minutes / 60))}:${two(minutes % 60)}` };
}

function wallMs(date: string, time: string): number {
  const [hours = 0, minutes = 0] = time.split(':').map(Number);
  return dayNumber(date) * DAY_MS + (hours * 60 + minutes) * MINUTE_MS;
}

/** The last moment of a rule: never, where it names none; NaN where it names one that does not exist. */
function untilOf({ UNTIL }: RuleParts): Instant {
  const read = UNTIL?.match(/^(\d{4})(\d\d)(\d\d)T(\d\d)(\d\d)(\d\d)Z$/);
  if (!read) return Number.POSITIVE_INFINITY;
  const [, year, month, day, hour, minute, second] = read;
  try {
    return instantOf('UTC', `${year}-${month}-${day}`, `${hour}:${minute}`) + Number(second) * 1000;
  } catch {
    return Number.NaN;
  }
}
