import { readSchedule, type Schedule } from './schedule';

/** How often a sheet comes round, which says how long it may wait. */
export const FREQUENCIES = ['shift', 'day', 'week', 'month', 'quarter', 'year'] as const;
export type Frequency = (typeof FREQUENCIES)[number];

/** Days on which something may be looked at in a week and still count as weekly. Common practice, no source. */
const SELDOM_DAYS = 3;
/** Months between two from which a schedule counts as quarterly, and as yearly. */
const QUARTER_MONTHS = 3;
const YEAR_MONTHS = 12;

/**
 * How often a schedule comes round: several times a day is each shift, up to three days a week is weekly, and one that comes
 * seldom counts by the months between.
 */
export function frequencyOf(schedule: Schedule): Frequency {
  const read = readSchedule(schedule);
  const parts = read.ok ? read.value.parts : null;
  const every = Number(parts?.INTERVAL ?? 1);
  const count = (list: string | undefined) => list?.split(',').length ?? 1;
  switch (parts?.FREQ) {
    case 'YEARLY':
      return byMonths((YEAR_MONTHS * every) / Math.max(1, count(parts.BYMONTH)));
    case 'MONTHLY':
      return byMonths(every / Math.max(1, count(parts.BYDAY ?? parts.BYMONTHDAY)));
    case 'WEEKLY':
      if (every === 1 && count(parts.BYDAY) > SELDOM_DAYS) return daily(schedule);
      return byDays((7 * every) / count(parts.BYDAY));
    case 'DAILY':
    case undefined:
      return every === 1 ? daily(schedule) : byDays(every);
  }
}

function daily({ times }: Schedule): Frequency {
  return times.length > 1 ? 'shift' : 'day';
}

/** Beyond a fortnight it waits as long as what comes monthly. Common practice, no source. */
function byDays(days: number): Frequency {
  if (days < 28) return 'week';
  return byMonths(days / 30.4);
}

function byMonths(months: number): Frequency {
  if (months >= YEAR_MONTHS) return 'year';
  if (months >= QUARTER_MONTHS) return 'quarter';
  return months < 0.9 ? 'week' : 'month';
}
