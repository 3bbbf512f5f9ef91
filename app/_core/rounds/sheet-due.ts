import { allowedFrom, type QuietSpan } from '../plans/quiet-at';
import { shiftTurns } from '../rota/shift-turns';
import type { Shift } from '../rota/rota';
import { addDays } from '../time/add-days';
import { type Instant, wallClock } from '../time/zone';
import { type Frequency, frequencyOf } from './frequency';
import { dayEnd, dueDays, type Schedule, type SiteDays, timesOn } from './schedule';

/** One time that a sheet is due: from when it may be begun, is late, and can no longer be made good. */
export interface SheetDue {
  /** Day on which it is due at the site, ISO date. */
  date: string;
  dueAt: Instant;
  opensAt: Instant;
  lateAt: Instant;
  /** When the window of the next one opens: from then on this one is missed. */
  closesAt: Instant;
}

/** What of a kept sheet its due times hang on. */
export interface Scheduled {
  schedule: Schedule;
  /** Minutes after which it is late; left out: by how often it comes round. */
  graceMin?: number;
  /** Quiet hours that its times give way to, as far ahead as dues are asked for and a week more; none: it keeps its times. */
  quiet?: readonly QuietSpan[];
}

/** Somebody is on site. */
interface Turn {
  start: Instant;
  end: Instant;
}

const MINUTE_MS = 60_000;
const HOUR_MIN = 60;
const DAY_MIN = 24 * HOUR_MIN;

/** Minutes after which what comes round so often is late; of a daily one it is the end of its shift. Common practice, no source. */
const GRACE_MIN: Record<Exclude<Frequency, 'day'>, number> = {
  shift: 2 * HOUR_MIN,
  week: DAY_MIN,
  month: 5 * DAY_MIN,
  quarter: 14 * DAY_MIN,
  year: 30 * DAY_MIN,
};
/** Minutes before it is due at which it may be begun. Common practice, no source. */
const EARLY_MIN: Record<Frequency, number> = {
  shift: HOUR_MIN,
  day: HOUR_MIN,
  week: DAY_MIN,
  month: 3 * DAY_MIN,
  quarter: 7 * DAY_MIN,
  year: 14 * DAY_MIN,
};
/** Days after the last one of a rule for which it can still be made good. Common practice, no source. */
const PERIOD_DAYS: Record<Frequency, number> = { shift: 1, day: 1, week: 7, month: 31, quarter: 92, year: 366 };
/** Days within which the next one is sought; one that comes more seldom is never overtaken within them. */
const AHEAD_DAYS: Record<Frequency, number> = { shift: 9, day: 9, week: 60, month: 120, quarter: 400, year: 800 };

/**
 * The times at which a sheet is due within some days, on the clocks of the site.
 *
 * Late: each shift after two hours, daily at the end of the shift it falls in or else of the day, weekly a day later, monthly
 * five, quarterly fourteen, yearly thirty; or as the sheet says for itself. Missed: once the next may be begun, or half-way to
 * it where two lie close together. Common practice, no source. A time in quiet hours is put off to their end, and two that so
 * fall together are one.
 *
 * @param from     first day, ISO date
 * @param to       the day after the last one
 * @param turns    when somebody is on site, for the end of the shift: see `onSiteTurns`
 * @throws RangeError when the schedule is not sound, or there is no such zone
 */
export function sheetDues(
  { schedule, graceMin, quiet = [] }: Scheduled,
  site: SiteDays,
  from: string,
  to: string,
  turns: readonly Turn[] = [],
): SheetDue[] {
  const frequency = frequencyOf(schedule);
  const earlyMs = EARLY_MIN[frequency] * MINUTE_MS;
  const all = putOff(timed(schedule, site, from, addDays(to, AHEAD_DAYS[frequency])), site.zone, quiet);
  return all.flatMap((one, index) => {
    if (one.date >= to) return [];
    const next = all[index + 1];
    // The last one of a rule can be made good for as long as the next would have been away.
    const closesAt = next
      ? Math.max(next.dueAt - earlyMs, (one.dueAt + next.dueAt) / 2)
      : one.dueAt + PERIOD_DAYS[frequency] * DAY_MIN * MINUTE_MS;
    const late =
      graceMin !== undefined
        ? one.dueAt + graceMin * MINUTE_MS
        : frequency === 'day'
          ? shiftEnd(one, site.zone, turns)
          : one.dueAt + GRACE_MIN[frequency] * MINUTE_MS;
    return [{ ...one, opensAt: one.dueAt - earlyMs, lateAt: Math.min(closesAt, late), closesAt }];
  });
}

/** When somebody is on site within some days, for the sheets of a site together. @param to the day after the last one */
export function onSiteTurns(shifts: readonly Shift[], zone: string, from: string, to: string): Turn[] {
  return shiftTurns(
    shifts.filter(({ kind }) => kind === 'on-site'),
    zone,
    addDays(from, -1),
    to,
  );
}

type Timed = Pick<SheetDue, 'date' | 'dueAt'>;

function timed(schedule: Schedule, site: SiteDays, from: string, to: string): Timed[] {
  const days = dueDays(schedule, site, from, to);
  return days
    .flatMap((date) => timesOn(schedule, site, date).map((dueAt) => ({ date, dueAt })))
    .sort((a, b) => a.dueAt - b.dueAt);
}

function putOff(times: Timed[], zone: string, quiet: readonly QuietSpan[]): Timed[] {
  if (quiet.length === 0) return times;
  const moved = times.map((one): Timed => {
    const dueAt = allowedFrom(quiet, one.dueAt) ?? one.dueAt;
    return dueAt === one.dueAt ? one : { date: wallClock(zone, dueAt).date, dueAt };
  });
  return [...new Map(moved.map((one) => [one.dueAt, one])).values()].sort((a, b) => a.dueAt - b.dueAt);
}

function shiftEnd({ dueAt, date }: Timed, zone: string, turns: readonly Turn[]): Instant {
  const ends = turns.filter(({ start, end }) => start <= dueAt && dueAt < end).map(({ end }) => end);
  return ends.length > 0 ? Math.max(...ends) : dayEnd(zone, date);
}
