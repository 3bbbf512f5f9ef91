import { DAYS } from '#core/facility/site';
import { type ShiftDays, shiftDays, shiftRule } from '#core/rota/shift-days';
import { shiftTurns } from '#core/rota/shift-turns';
import { addDays } from '#core/time/add-days';
import fc from 'fast-check';
import { DateTime } from 'luxon';
import rrule from 'rrule';
import { describe, expect, test } from 'vitest';
import { shift } from '../../_support/build-facility';
import { anyTimeOfDay } from './any-rota';

const { RRule } = rrule;
const every: ShiftDays = { days: [...DAYS] };
const utc = (date: string) => new Date(`${date}T12:00:00Z`);
const BY_DAY = {
  mon: RRule.MO,
  tue: RRule.TU,
  wed: RRule.WE,
  thu: RRule.TH,
  fri: RRule.FR,
  sat: RRule.SA,
  sun: RRule.SU,
};

/** The same days by the library rrule, a second reading of RFC 5545. */
function byRrule(rule: string, starts: string, from: string, to: string): string[] {
  const made = new RRule({ ...RRule.parseString(rule), dtstart: utc(starts) });
  return made.between(utc(from), new Date(utc(to).getTime() - 1), true).map((at) => at.toISOString().slice(0, 10));
}

describe('days on which a shift begins', () => {
  // Source: examples of RFC 5545, section 3.8.5.3, read by the day.
  test.each([
    ['FREQ=MONTHLY;BYDAY=1FR', '1997-09-05', ['1997-09-05', '1997-10-03', '1997-11-07', '1997-12-05']],
    [
      'FREQ=DAILY;INTERVAL=10;COUNT=5',
      '1997-09-02',
      ['1997-09-02', '1997-09-12', '1997-09-22', '1997-10-02', '1997-10-12'],
    ],
    ['FREQ=MONTHLY;BYMONTHDAY=13;BYDAY=FR', '1998-02-13', []],
    [
      'FREQ=WEEKLY;INTERVAL=2;WKST=SU;BYDAY=TU,TH;COUNT=8',
      '1997-09-02',
      ['1997-09-02', '1997-09-04', '1997-09-16', '1997-09-18', '1997-09-30', '1997-10-02', '1997-10-14', '1997-10-16'],
    ],
  ])('by the rule %s from %s are those of its worked example', (rule, starts, expected) => {
    expect(shiftDays({ ...every, rule, starts }, '1997-09-01', '1998-01-01')).toEqual(expected);
  });

  test('every n weeks are those of a weekly rule of the same interval, as another library reads it', () => {
    fc.assert(
      fc.property(
        fc.subarray([...DAYS], { minLength: 1 }),
        fc.integer({ min: 2, max: 9 }),
        fc.integer({ min: 0, max: 800 }),
        (days, everyWeeks, after) => {
          const starts = addDays('2025-01-01', after);
          const to = addDays(starts, 200);
          const words = days.map((day) => BY_DAY[day].toString()).join(',');
          const rule = `FREQ=WEEKLY;INTERVAL=${everyWeeks};WKST=MO;BYDAY=${words}`;
          expect(shiftDays({ days, everyWeeks, starts }, '2025-01-01', to)).toEqual(byRrule(rule, starts, starts, to));
        },
      ),
      { numRuns: 40 },
    );
  });

  test('keep to its first and last day, and leave out the days it is not there', () => {
    const bound = {
      ...every,
      starts: '2026-12-23',
      ends: '2026-12-27',
      except: [{ on: '2026-12-25', why: 'Christmas Day' }],
    };
    expect(shiftDays(bound, '2026-12-01', '2027-02-01')).toEqual([
      '2026-12-23',
      '2026-12-24',
      '2026-12-26',
      '2026-12-27',
    ]);
    expect(shiftDays(bound, '2026-12-24', '2026-12-25')).toEqual(['2026-12-24']);
    expect(shiftDays(bound, '2027-01-01', '2027-02-01')).toEqual([]);
  });

  test('are only those of its weekdays that its rule has as well', () => {
    const rule = { days: ['sat' as const], rule: 'FREQ=DAILY;INTERVAL=4', starts: '2026-06-06' };
    expect(shiftDays(rule, '2026-06-01', '2026-07-31')).toEqual(['2026-06-06', '2026-07-04']);
  });

  test.each([
    [{ rule: 'FREQ=HOURLY', starts: '2026-06-01' }, 'elapsed time'],
    [{ rule: 'FREQ=DAILY;BYHOUR=3', starts: '2026-06-01' }, 'BYHOUR'],
    [{ rule: 'FREQ=MONTHLY;BYDAY=1SA', starts: '2026-06-01' }, 'not a time of the rule'],
    [{ rule: 'FREQ=DAILY' }, 'first day'],
  ])('of a rule that cannot be read are none, and why is said: %o', (given, why) => {
    const read = shiftRule(given);
    expect(read.ok ? '' : read.reason.join(' ')).toContain(why);
    expect(shiftDays({ ...every, ...given }, '2026-06-01', '2026-08-01')).toEqual([]);
  });
});

describe('a turn', () => {
  // A second library for zones: luxon. It puts a time that is leapt over off by the leap, and takes the first of two.
  test('begins and ends when another library says, in any zone, whatever the clocks do', () => {
    const zones = fc.constantFrom(
      'America/New_York',
      'Europe/London',
      'Australia/Lord_Howe',
      'Asia/Kathmandu',
      'America/Santiago',
    );
    const day = fc.integer({ min: 0, max: 4000 }).map((days) => addDays('2019-01-01', days));
    fc.assert(
      fc.property(zones, day, anyTimeOfDay(), anyTimeOfDay(), (zone, date, from, to) => {
        const last = to <= from ? addDays(date, 1) : date;
        const at = (on: string, time: string) => DateTime.fromISO(`${on}T${time}`, { zone });
        const wanted = { start: at(date, from).toMillis(), end: at(last, to).toMillis() };
        const got = shiftTurns([shift({ days: [...DAYS], from, to })], zone, date, addDays(date, 1));
        const isMeant = (one: DateTime, time: string) => one.toFormat('HH:mm') === time;
        // Of a time that is shown twice luxon takes whichever offset it guesses; those nights stand in the tables of duties.test.
        const isTwice = [at(date, from), at(last, to)].some((one) => one.getPossibleOffsets().length > 1);
        if (isTwice || !isMeant(at(date, from), from) || !isMeant(at(last, to), to)) return;
        expect(got.map(({ start, end }) => ({ start, end }))).toEqual([wanted]);
      }),
      { numRuns: 200 },
    );
  });
});
