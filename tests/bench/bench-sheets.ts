import { DateTime } from 'luxon';
import rrule from 'rrule';
import { SHEET_FORMAT } from '#core/rounds/sheet';
import type { RoundSheet } from '#core/rounds/round-sheet';
import { firstDayOf } from '#core/rounds/first-day';
import { dueDays, type SiteDays, timesOn } from '#core/rounds/schedule';
import { addDays } from '#core/time/add-days';
import { wallClock } from '#core/time/zone';
import { pool } from '#data/pool';
import { now } from '#server/clock';
import { findSiteById } from '#data/sites';
import { LOCAL_PERSON } from '#server/gate/who';
import { listRounds } from '#server/rounds/list-rounds';
import { roundsStanding } from '#server/rounds/rounds-standing';
import { listSheets } from '#server/rounds/sheets/list-sheets';
import { planDues } from '#server/rounds/sheets/plan-dues';
import { facility } from '../_support/build-facility';
import { smallSystem } from '../_support/small-facility';
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

/** Systems that the sheets look at. */
const SYSTEMS = 60;
/** Days of due times that have come, and of rounds of them, that a site of some age holds. */
const PAST_DAYS = 360;

/**
 * How long the due times of 500 sheets take, sixty days ahead, against the library `rrule` with luxon; to keep them; and to say how
 * they stand on a list of 60 systems, of a site that has been walked for a year.
 */
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
    await keep({ ...base, systems: manySystems(), sheets });
    const { siteId } = await stored(base.site.key);
    const first = await took(() => planDues(siteId, now()));
    const again = await took(() => planDues(siteId, now()));
    const { rows } = await pool().query<{ many: number }>('SELECT count(*)::int AS many FROM sheet_due');
    const standing = await tookToStand(siteId);
    return [
      `  kept by the worker: ${rows[0]?.many} rows in ${first.toFixed(0)} ms, done again ${again.toFixed(0)} ms`,
      ...standing,
    ];
  });
  return [
    `Due times of ${SHEETS} sheets, ${DAYS_AHEAD} days ahead: ${own().length}`,
    `  ${(ownMs / referenceMs).toFixed(2)} of the time of rrule with luxon (${ownMs.toFixed(0)} ms, ${referenceMs.toFixed(0)} ms)`,
    ...keptLine,
  ];
}

function manySystems() {
  return Array.from({ length: SYSTEMS }, (_, index) => smallSystem(`tank-${index}`, `Tank ${index}`));
}

/** How the rounds of the site stand, as overviews and lists ask: at first, and again; then the list of its sheets. */
async function tookToStand(siteId: string): Promise<string[]> {
  await fillPast(siteId);
  const site = await findSiteById(siteId);
  const { facility } = await stored(site?.key ?? '');
  if (!site) throw new Error('the site is gone');
  const stand = () => took(async () => void (await roundsStanding(site, facility, now())));
  const [first, ...more] = [await stand(), await stand(), await stand(), await stand(), await stand()];
  const list = async () => void (await listSheets(LOCAL_PERSON, { site: site.key }));
  await list();
  const [listed, page] = [
    await took(list),
    await took(async () => void (await listRounds(LOCAL_PERSON, { site: site.key }))),
  ];
  const { rows } = await pool().query<{ many: number }>('SELECT count(*)::int AS many FROM sheet_due');
  return [
    `  ${SYSTEMS} systems, a year of ${rows[0]?.many} due times: how rounds stand in ${first?.toFixed(0)} ms, again ${Math.min(...more).toFixed(0)} ms;` +
      ` the list of rounds ${page.toFixed(0)} ms, of sheets ${listed.toFixed(0)} ms`,
  ];
}

/** A year of due times that have come, each walked and signed, but for one in fifty. */
async function fillPast(siteId: string): Promise<void> {
  const client = pool();
  await client.query(
    `INSERT INTO sheet_due SELECT d.site_id, d.sheet_id, d.due_at - make_interval(days => k), d.day, d.version,
            d.opens_at - make_interval(days => k), d.late_at - make_interval(days => k), d.closes_at - make_interval(days => k)
       FROM sheet_due d, generate_series(${DAYS_AHEAD}, ${PAST_DAYS}, ${DAYS_AHEAD}) AS k
      WHERE d.site_id = $1 AND d.due_at > now() ON CONFLICT DO NOTHING`,
    [siteId],
  );
  await client.query(
    `INSERT INTO round (site_id, id, name, due_at, begun_at, begun_by, sheet, sheet_id, sheet_version)
     SELECT d.site_id, gen_random_uuid(), 'Sheet', d.due_at, d.due_at, 'local', $2, d.sheet_id, d.version
       FROM sheet_due d WHERE d.site_id = $1 AND d.due_at < now() AND random() > 0.02`,
    [siteId, JSON.stringify({ format: SHEET_FORMAT, places: [], sensors: {} })],
  );
  await client.query(
    `INSERT INTO round_signature (site_id, id, round_id, kind, at, by)
     SELECT site_id, gen_random_uuid(), id, kind, begun_at, 'local'
       FROM round, unnest(ARRAY['signed', 'second-look']) AS kind WHERE site_id = $1`,
    [siteId],
  );
  await client.query('ANALYZE');
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
