import { DAYS } from '../facility/site';
import { firstDayOf } from '../rounds/first-day';
import { ruleOf } from '../rounds/rule-words';
import { dueDays, type Schedule, type SiteDays, timesOn } from '../rounds/schedule';
import { addDays } from '../time/add-days';
import { type Instant, wallClock } from '../time/zone';

/** How long after its time it is still begun, ms: a worker may have been away. */
const LATE_MS = 10 * 60_000;
/** Days about today of which a time may fall on now: it may be counted from closing, after midnight, or a day from it. */
const ABOUT_DAYS = 2;

/**
 * The instant at which a state was to begin by its schedule, where that is now or was within ten minutes. The rule is one of
 * RFC 5545 as that of a sheet; a time that the clocks leap over is put off by the leap, of one shown twice the first counts
 * (RFC 5545, 3.3.5).
 *
 * @param site   its zone, hours and holidays
 * @returns      ms since 1970; null when none is due
 * @throws RangeError when the schedule is not sound
 */
export function timedDue(schedule: Schedule, site: SiteDays, now: Instant): Instant | null {
  const today = wallClock(site.zone, now).date;
  const days = dueDays(schedule, site, addDays(today, -ABOUT_DAYS), addDays(today, ABOUT_DAYS + 1));
  const due = days.flatMap((date) => timesOn(schedule, site, date)).filter((at) => at <= now && now - at < LATE_MS);
  return due.length > 0 ? Math.max(...due) : null;
}

/**
 * The schedule of days of the week and one time, as states by the clock were kept before they had one.
 *
 * @param days   as the rota names them, at least one
 * @param at     local time, "HH:MM"
 * @param from   ISO date from which it counts
 */
export function scheduleOfDays(days: readonly string[], at: string, from: string): Schedule {
  const rule = ruleOf({ is: 'weeks', every: 1, on: DAYS.filter((day) => days.includes(day)) });
  return { rule, from: firstDayOf(rule, from) ?? from, times: [{ at }] };
}
