import { firstDayOf } from '#core/rounds/first-day';
import { plainOf, ruleOf, ruleSaid, type PlainRule } from '#core/rounds/rule-words';
import { dueDays, readSchedule, timesOn, type Schedule, type SiteDays } from '#core/rounds/schedule';
import { DAYS } from '#core/facility/site';
import { addDays } from '#core/time/add-days';
import { wallClock } from '#core/time/zone';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { outsideInstant, outsideTimes } from '../time/outside';
import { datesOf, RFC_EXAMPLES } from '../time/rfc-examples';

const ZONES = ['America/New_York', 'Europe/London', 'Australia/Lord_Howe'];
const site = (zone: string, more: Partial<SiteDays> = {}): SiteDays => ({ zone, hours: [], holidays: [], ...more });
const due = (schedule: Schedule, at: SiteDays, from: string, to: string) =>
  dueDays(schedule, at, from, to).flatMap((date) => timesOn(schedule, at, date));

describe('against two libraries from outside', () => {
  test.each(RFC_EXAMPLES)(
    'both read the example of RFC 5545 from %s, %s as it is printed there',
    (start, rule, words, to) => {
      const end = `${to ?? '2030-01-01'}T00:00`;
      const { rrule, ical } = outsideTimes(rule, `${start}T09:00`, end);
      const printed = datesOf(words).map((date) => `${date}T09:00`);
      expect(rrule).toEqual(printed);
      expect(ical).toEqual(printed);
    },
  );

  const plain: fc.Arbitrary<PlainRule> = fc.oneof(
    fc.record({ is: fc.constant('days' as const), every: fc.integer({ min: 1, max: 9 }) }),
    fc.record({
      is: fc.constant('weeks' as const),
      every: fc.integer({ min: 1, max: 4 }),
      on: fc.subarray([...DAYS], { minLength: 1 }),
    }),
    fc.record({
      is: fc.constant('months-weekday' as const),
      every: fc.integer({ min: 1, max: 6 }),
      nth: fc.constantFrom(1, 2, 3, 4, -1),
      on: fc.constantFrom(...DAYS),
    }),
    fc.record({
      is: fc.constant('months-day' as const),
      every: fc.integer({ min: 1, max: 12 }),
      day: fc.constantFrom(1, 15, 28, -1),
    }),
  );

  test('whatever the plain rule, its due times are those of both, in zones that leap and one that leaps by half an hour', () => {
    let many = 0;
    fc.assert(
      fc.property(
        plain,
        fc.constantFrom(...ZONES),
        fc.integer({ min: 0, max: 700 }),
        fc.constantFrom('00:15', '01:15', '01:45', '02:30', '07:00', '23:45'),
        (rule, zone, offset, time) => {
          const text = ruleOf(rule);
          const from = firstDayOf(text, addDays('2025-09-01', offset)) ?? '';
          const to = addDays(from, 240);
          const ours = due({ rule: text, from, times: [{ at: time }] }, site(zone), from, to);
          const theirs = outsideTimes(text, `${from}T${time}`, `${to}T00:00`);
          const moments = (walls: string[]) => [...new Set(walls.map((wall) => outsideInstant(zone, wall)))];
          expect(ours).toEqual(moments(theirs.rrule));
          expect(ours).toEqual(moments(theirs.ical));
          many += ours.length;
        },
      ),
      { numRuns: 60, seed: 5545 },
    );
    expect(many).toBeGreaterThan(500);
  });
});

describe('when the clocks change', () => {
  // Source: the transitions of the IANA time zone database for 2026, as luxon shows them beside.
  test.each([
    ['America/New_York', '2026-03-08', '02:30', '03:30 -04:00'],
    ['America/New_York', '2026-11-01', '01:30', '01:30 -04:00'],
    ['Europe/London', '2026-03-29', '01:30', '02:30 +01:00'],
    ['Europe/London', '2026-10-25', '01:30', '01:30 +01:00'],
    ['Australia/Lord_Howe', '2026-10-04', '02:15', '02:45 +11:00'],
    ['Australia/Lord_Howe', '2026-04-05', '01:45', '01:45 +11:00'],
  ])('in %s on %s what is due at %s is due at %s, and once', (zone, date, at, expected) => {
    const daily: Schedule = { rule: 'FREQ=DAILY', from: '2026-01-01', times: [{ at }] };
    const times = due(daily, site(zone), date, addDays(date, 1));
    const shown = times.map((one) => wallClock(zone, one)).map(({ time, offset }) => `${time} ${offset}`);
    expect(shown).toEqual([expected]);
    expect(times).toEqual([outsideInstant(zone, `${date}T${at}`)]);
  });

  test('a day that a place left out of its calendar has no due time, and the next none twice', () => {
    // Source: Samoa went from 29 to 31 December 2011 (IANA time zone database).
    const daily: Schedule = { rule: 'FREQ=DAILY', from: '2011-12-01', times: [{ at: '07:00' }] };
    expect(dueDays(daily, site('Pacific/Apia'), '2011-12-29', '2012-01-01')).toEqual(['2011-12-29', '2011-12-31']);
  });
});

describe('days that are left out, and hours', () => {
  const hours = [
    { days: ['mon' as const, 'tue' as const], opens: '10:00', closes: '18:00' },
    { days: ['fri' as const], opens: '18:00', closes: '02:00' },
  ];
  const london = site('Europe/London', { hours, holidays: ['2026-05-25'] });
  const shown = (schedule: Schedule, from: string, to: string) =>
    due(schedule, london, from, to).map(
      (at) => `${wallClock(london.zone, at).date} ${wallClock(london.zone, at).time}`,
    );

  test('an exception is left out, a holiday only where the sheet says so, and nothing after the last day', () => {
    const mondays: Schedule = { rule: 'FREQ=WEEKLY;BYDAY=MO', from: '2026-05-04', times: [{ at: '08:00' }] };
    const days = (more: Partial<Schedule>) => dueDays({ ...mondays, ...more }, london, '2026-05-01', '2026-06-10');
    expect(days({})).toEqual(['2026-05-04', '2026-05-11', '2026-05-18', '2026-05-25', '2026-06-01', '2026-06-08']);
    expect(days({ except: ['2026-05-11'], notOnHolidays: true, until: '2026-06-01' })).toEqual([
      '2026-05-04',
      '2026-05-18',
      '2026-06-01',
    ]);
  });

  test('an hour before opening moves with the hours of the day, and stands on the clock where the site stays shut', () => {
    const first: Schedule = {
      rule: 'FREQ=DAILY',
      from: '2026-05-01',
      times: [{ at: '07:30', anchor: 'opening', afterMin: -60 }],
    };
    expect(shown(first, '2026-05-04', '2026-05-07')).toEqual([
      '2026-05-04 09:00',
      '2026-05-05 09:00',
      '2026-05-06 07:30',
    ]);
  });

  test('a site that closes after midnight closes on the next day', () => {
    const last: Schedule = {
      rule: 'FREQ=WEEKLY;BYDAY=FR',
      from: '2026-05-01',
      times: [{ at: '20:00', anchor: 'closing' }],
    };
    expect(shown(last, '2026-05-08', '2026-05-09')).toEqual(['2026-05-09 02:00']);
  });

  test('times of the day and a last day inside the rule, or a start that is none of its days, are refused', () => {
    const of = (rule: string, from = '2026-05-04') => readSchedule({ rule, from, times: [{ at: '08:00' }] }).ok;
    expect(of('FREQ=DAILY')).toBe(true);
    expect(of('FREQ=DAILY;BYHOUR=8')).toBe(false);
    expect(of('FREQ=DAILY;UNTIL=20260601T000000Z')).toBe(false);
    expect(of('FREQ=WEEKLY;BYDAY=TU')).toBe(false);
    expect(readSchedule({ rule: 'FREQ=DAILY', from: '2026-05-04', times: [] }).ok).toBe(false);
  });
});

describe('a rule in words', () => {
  test.each([
    ['FREQ=DAILY', 'every day'],
    ['FREQ=DAILY;INTERVAL=3', 'every 3 days'],
    ['FREQ=WEEKLY;BYDAY=MO,TH', 'every Monday and Thursday'],
    ['FREQ=WEEKLY;INTERVAL=2;BYDAY=SA', 'Saturday of every second week'],
    ['FREQ=MONTHLY;BYDAY=1FR', 'the first Friday of every month'],
    ['FREQ=MONTHLY;INTERVAL=3;BYDAY=-1SU', 'the last Sunday of every third month'],
    ['FREQ=MONTHLY;INTERVAL=12;BYMONTHDAY=15', 'day 15 of every 12th month'],
    ['FREQ=MONTHLY;BYMONTHDAY=-1', 'the last day of every month'],
  ])('%s is %s, and comes back as it was', (rule, words) => {
    expect(ruleSaid(rule)).toBe(words);
    const plain = plainOf(rule);
    expect(plain && ruleOf(plain)).toBe(rule);
  });

  test('a rule that has more to it is kept as it is', () => {
    expect(plainOf('FREQ=MONTHLY;BYDAY=MO,TU;BYSETPOS=-1')).toBeNull();
    expect(plainOf('FREQ=YEARLY;BYMONTH=3')).toBeNull();
    expect(ruleSaid('FREQ=YEARLY;BYMONTH=3')).toContain('FREQ=YEARLY;BYMONTH=3');
  });
});
