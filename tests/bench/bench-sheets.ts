import { DateTime } from 'luxon';
import rrule from 'rrule';
import type { RoundSheet } from '#core/rounds/round-sheet';
import { firstDayOf } from '#core/rounds/first-day';
import { dueDays, type SiteDays, timesOn } from '#core/rounds/schedule';
import { addDays } from '#core/time/add-days';
import { wallClock } from '#core/time/zone';
import { pool } from '#data/pool';
import { now } from '#server/clock';
import { planDues } from '#server/rounds/sheets/plan-dues';
import { facility } from '../_support/build-facility';
import { keep, stored } from '../_support/stored';
import { onFreshServer } from './fresh-server';

const SHEETS = 500;
const DAYS_AHEAD = 60;
const TIMES = 5;
/** How often sheets come round: as many of each as a site of plant, animals, water and tests has. */
const RULES: [rule: string, times: string[]][] = [
  ['FREQ=DAILY', ['07:00', '19:00']],
  ['FREQ=DAILY', ['08:00']],
  ['FREQ=WEEKLY;BYDAY=MO,TH', ['10:00']],
  ['FREQ=WEEKLY;INTERVAL=2;BYDAY=TU', ['10:00']],
  ['FREQ=MONTHLY;BYDAY=1WE', ['10:00']],
  ['FREQ=MONTHLY;INTERVAL=3;BYMONTHDAY=-1', ['02:30']],
];

/** How long the due times of 500 sheets take, sixty days ahead, against the library `rrule` with luxon; and to keep them. */
export async function benchSheets(): Promise<string[]> {
  const base = facility();
  const site: SiteDays = { zone: base.site.zone, hours: [], holidays: [] };
  const from = wallClock(site.zone, now().getTime()).date;
  const to = addDays(from, DAYS_AHEAD);
  const sheets = sheetsFrom(addDays(from, -365));
  const own = () =>
    sheets.flatMap(({ schedule }) => dueDays(schedule, site, from, to).flatMap((day) => timesOn(schedule, site, day)));
  const reference = () => sheets.flatMap((sheet) => byRrule(sheet, site.zone, from, to));
  if (JSON.stringify(own()) !== JSON.stringify(reference())) throw new Error('the two do not agree');
  const [ownMs, referenceMs] = [best(own), best(reference)];
  const keptLine = await onFreshServer(async () => {
    await keep({ ...base, sheets });
    const { siteId } = await stored(base.site.key);
    const first = await took(() => planDues(siteId, now()));
    const again = await took(() => planDues(siteId, now()));
    const { rows } = await pool().query<{ many: number }>('SELECT count(*)::int AS many FROM sheet_due');
    return `  kept by the worker: ${rows[0]?.many} rows in ${first.toFixed(0)} ms, done again ${again.toFixed(0)} ms`;
  });
  return [
    `Due times of ${SHEETS} sheets, ${DAYS_AHEAD} days ahead: ${own().length}`,
    `  ${(ownMs / referenceMs).toFixed(2)} of the time of rrule with luxon (${ownMs.toFixed(0)} ms, ${referenceMs.toFixed(0)} ms)`,
    keptLine,
  ];
}

function sheetsFrom(day: string): RoundSheet[] {
  return Array.from({ length: SHEETS }, (_, index) => {
    const [rule, times] = RULES[index % RULES.length] ?? ['FREQ=DAILY', ['08:00']];
    return {
      key: `sheet-${index}`,
      name: `Sheet ${index}`,
      schedule: { rule, from: firstDayOf(rule, day) ?? day, times: times.map((at) => ({ at })) },
      lines: [{ kind: 'text', key: 'note', what: 'Note' }],
    };
  });
}

function byRrule({ schedule }: RoundSheet, zone: string, from: string, to: string): number[] {
  const utc = (date: string) => DateTime.fromISO(date, { zone: 'utc' });
  const rule = new rrule.RRule({ ...rrule.RRule.parseString(schedule.rule), dtstart: utc(schedule.from).toJSDate() });
  const days = rule.between(utc(from).toJSDate(), utc(to).minus({ minute: 1 }).toJSDate(), true);
  return days.flatMap((day) =>
    schedule.times.map(({ at }) => {
      const there = DateTime.fromISO(`${day.toISOString().slice(0, 10)}T${at}`, { zone });
      return Math.min(...there.getPossibleOffsets().map((one) => one.toMillis()));
    }),
  );
}

/** The best of some times: what else the machine does only ever adds. */
function best(work: () => unknown): number {
  return Math.min(
    ...Array.from({ length: TIMES }, () => {
      const began = performance.now();
      work();
      return performance.now() - began;
    }),
  );
}

async function took(work: () => Promise<void>): Promise<number> {
  const began = performance.now();
  await work();
  return performance.now() - began;
}
