import { addDays } from '../time/add-days';
import { readRecurrence } from '../time/recurrence';
import { readRuleParts } from '../time/rule-parts';

/** Within four years and a few days every plain rule comes at least once, February 29 among them. */
const FIRST_WITHIN_DAYS = 1500;

/**
 * The first day of a rule on or after a day: where it begins, for RFC 5545 has a rule begin on one of its own days.
 * @returns ISO date; null when the rule is not sound, or has no day within four years
 */
export function firstDayOf(rule: string, onOrAfter: string): string | null {
  for (let date = onOrAfter, tried = 0; tried < FIRST_WITHIN_DAYS; date = addDays(date, 1), tried += 1) {
    const read = readRecurrence({ rule, start: { date, time: '12:00' }, zone: 'UTC' });
    if (read.ok) return date;
    if (!readRuleParts(rule).ok) return null;
  }
  return null;
}
