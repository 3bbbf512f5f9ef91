import { ruleSaid } from './rule-words';
import type { DueTime, Schedule } from './schedule';

/** When something is due, in words: "every day at 07:00 and 19:00". */
export function scheduleSaid({ rule, times, until, notOnHolidays }: Schedule): string {
  const ends = [until ? `until ${until}` : '', notOnHolidays ? 'but not on holidays' : ''].filter((end) => end !== '');
  return [`${ruleSaid(rule)} ${times.map(timeSaid).join(' and ')}`, ...ends].join(', ');
}

function timeSaid({ at, anchor, afterMin = 0 }: DueTime): string {
  if (anchor === undefined) return `at ${at}`;
  const when = afterMin === 0 ? 'at' : `${Math.abs(afterMin)} min ${afterMin < 0 ? 'before' : 'after'}`;
  return `${when} ${anchor} (${at} when the site is closed)`;
}
