import { occurrences, readRecurrence } from '#core/time/recurrence';
import { instantOf, wallClock } from '#core/time/zone';
import { datesOf, RFC_EXAMPLES } from './rfc-examples';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

const NEW_YORK = 'America/New_York';

function sound(rule: string, date: string, time = '09:00', zone = NEW_YORK) {
  const read = readRecurrence({ rule, start: { date, time }, zone });
  if (!read.ok) throw new Error(read.reason.join(' '));
  return read.value;
}

/** Times of a rule between two days of its zone, as its clocks show them. */
function shown(rule: string, start: string, from: string, to: string, time = '09:00', zone = NEW_YORK): string[] {
  const times = occurrences(
    sound(rule, start, time, zone),
    instantOf(zone, from, '00:00'),
    instantOf(zone, to, '00:00'),
  );
  return times.map((at) => {
    const clock = wallClock(zone, at);
    return `${clock.date} ${clock.time} ${clock.offset}`;
  });
}

const FAR = '2030-01-01';
describe('the examples of RFC 5545', () => {
  test.each(RFC_EXAMPLES)('from %s, %s', (start, rule, expected, to = FAR) => {
    const times = shown(rule, start, start, to);
    expect(times.map((line) => line.slice(0, 10))).toEqual(datesOf(expected));
    // On the wall it is always nine; the offset is that of New York on the day.
    expect(times.filter((line) => line.slice(11, 16) !== '09:00')).toEqual([]);
  });

  test('a daily rule until Christmas Eve keeps its time on the wall when summer time ends', () => {
    const times = shown('FREQ=DAILY;UNTIL=19971224T000000Z', '1997-09-02', '1997-09-02', FAR);
    expect(times.length).toBe(113);
    expect(times.at(-1)).toBe('1997-12-23 09:00 -05:00');
    expect(times).toContain('1997-10-25 09:00 -04:00');
    expect(times).toContain('1997-10-26 09:00 -05:00');
  });
});

describe('when the clocks change', () => {
  test('a time that is leapt over is put off by the length of the leap, once, and the next day is as ever', () => {
    // Source: RFC 5545 section 3.3.5 for the moment; that none is dropped is our rule.
    expect(shown('FREQ=DAILY', '2026-03-01', '2026-03-07', '2026-03-10', '02:30')).toEqual([
      '2026-03-07 02:30 -05:00',
      '2026-03-08 03:30 -04:00',
      '2026-03-09 02:30 -04:00',
    ]);
  });

  test('a time that comes twice is meant once, at first', () => {
    expect(shown('FREQ=DAILY', '2026-10-01', '2026-10-31', '2026-11-03', '01:30')).toEqual([
      '2026-10-31 01:30 -04:00',
      '2026-11-01 01:30 -04:00',
      '2026-11-02 01:30 -05:00',
    ]);
  });

  test('two times of a rule that fall on one moment are one', () => {
    expect(shown('FREQ=DAILY;BYHOUR=2,3', '2026-03-01', '2026-03-08', '2026-03-09', '02:30')).toEqual([
      '2026-03-08 03:30 -04:00',
    ]);
  });

  test('half an hour is a leap too', () => {
    const given = ['FREQ=DAILY', '2026-10-01', '2026-10-04', '2026-10-05', '02:15', 'Australia/Lord_Howe'] as const;
    expect(shown(...given)).toEqual(['2026-10-04 02:45 +11:00']);
  });

  test('every day of the calendar has its time, in every zone', () => {
    const anyZone = fc.constantFrom(...Intl.supportedValuesOf('timeZone').filter((zone) => zone !== 'Pacific/Apia'));
    const anyTime = fc
      .tuple(fc.nat(23), fc.nat(59))
      .map((both) => both.map((n) => String(n).padStart(2, '0')).join(':'));
    fc.assert(
      fc.property(anyZone, anyTime, fc.integer({ min: 2015, max: 2035 }), (zone, time, year) => {
        const [from, to] = [`${year}-01-01`, `${year + 1}-01-01`];
        const days = shown('FREQ=DAILY', '2014-01-01', from, to, time, zone).map((line) => line.slice(0, 10));
        expect(days.length).toBe(new Date(`${year}-02-29T00:00Z`).getUTCDate() === 29 ? 366 : 365);
        expect(new Set(days).size).toBe(days.length);
      }),
      { numRuns: 25 },
    );
  });
});

describe('a recurrence', () => {
  test('is cut at both ends of what is asked: the first moment counts, the last does not', () => {
    const daily = sound('FREQ=DAILY', '2026-06-01');
    const [second, third] = [instantOf(NEW_YORK, '2026-06-02', '09:00'), instantOf(NEW_YORK, '2026-06-03', '09:00')];
    expect(occurrences(daily, second, third)).toEqual([second]);
    expect(occurrences(daily, second + 1, third + 1)).toEqual([third]);
  });

  test('counts its times from its start, wherever it is looked at, and has none before', () => {
    expect(shown('FREQ=DAILY;COUNT=3', '2026-06-01', '2026-06-03', FAR)).toEqual(['2026-06-03 09:00 -04:00']);
    expect(shown('FREQ=DAILY', '2026-06-01', '2026-05-01', '2026-06-02')).toEqual(['2026-06-01 09:00 -04:00']);
  });

  test('still runs after many years', () => {
    expect(shown('FREQ=DAILY', '1990-01-01', '2099-12-31', '2100-01-01')).toEqual(['2099-12-31 09:00 -05:00']);
    expect(shown('FREQ=YEARLY', '2004-02-29', '2095-01-01', '2097-01-01')).toEqual(['2096-02-29 09:00 -05:00']);
  });

  test('ends with the moment it names, in UTC', () => {
    // Not the RFC's own printed example of this kind, which reads UNTIL as local time against its own rule.
    expect(shown('FREQ=DAILY;UNTIL=20260603T130000Z', '2026-06-01', '2026-06-01', FAR).length).toBe(3);
    expect(shown('FREQ=DAILY;UNTIL=20260603T125959Z', '2026-06-01', '2026-06-01', FAR).length).toBe(2);
  });
});

/** Source of each refusal: RFC 5545 sections 3.3.10 and 3.8.5.3, but where a comment says that it is ours. */
const REFUSED: [rule: string, sentence: string][] = [
  ['FREQ=DAILY;COUNT=2;UNTIL=20270101T000000Z', 'UNTIL and COUNT may not stand together'],
  ['FREQ=DAILY;UNTIL=20270101', 'UNTIL=20270101 is not what it should be: a moment in UTC'],
  ['FREQ=DAILY;UNTIL=20270230T000000Z', 'UNTIL=20270230T000000Z is no moment of the calendar'],
  // Ours: a rule that ends before it begins is a slip.
  ['FREQ=DAILY;UNTIL=20200101T000000Z', 'UNTIL lies before the start'],
  ['FREQ=DAILY;BYDAY=1MO', 'only with MONTHLY and YEARLY'],
  ['FREQ=WEEKLY;BYDAY=-1MO', 'only with MONTHLY and YEARLY'],
  ['FREQ=MONTHLY;BYDAY=0MO', 'BYDAY=0MO is not what it should be'],
  ['FREQ=MONTHLY;BYDAY=6MO', 'no day of the week comes more than five times a month'],
  ['FREQ=WEEKLY;BYMONTHDAY=1', 'BYMONTHDAY may not stand with FREQ=WEEKLY'],
  ['FREQ=DAILY;BYSETPOS=1', 'BYSETPOS picks from what another BY part names'],
  ['FREQ=MONTHLY;BYMONTHDAY=32', 'BYMONTHDAY=32 is not what it should be'],
  ['FREQ=MONTHLY;BYMONTHDAY=0', 'BYMONTHDAY=0 is not what it should be'],
  ['FREQ=YEARLY;BYMONTH=13', 'BYMONTH=13 is not what it should be'],
  ['FREQ=DAILY;BYHOUR=24', 'BYHOUR=24 is not what it should be'],
  ['FREQ=DAILY;INTERVAL=0', 'INTERVAL=0 is not what it should be'],
  ['FREQ=DAILY;COUNT=0', 'COUNT=0 is not what it should be'],
  ['FREQ=WEEKLY;WKST=XX', 'WKST=XX is not what it should be'],
  ['COUNT=2', 'FREQ is missing'],
  ['FREQ=DAILY;FREQ=WEEKLY', 'FREQ stands twice'],
  ['FREQ=SOMETIMES', 'FREQ=SOMETIMES is none of DAILY'],
  // Ours: what is left out of the standard, and why.
  ['FREQ=HOURLY;INTERVAL=4', 'every so many hours or minutes is elapsed time'],
  ['FREQ=YEARLY;BYWEEKNO=20', 'BYWEEKNO is not understood here'],
  ['FREQ=DAILY;', 'An empty part is not understood here'],
  ['FREQ=DAILY;COLOUR=BLUE', 'COLOUR is not understood here'],
  ['FREQ=DAILY;INTERVAL=2=3', 'INTERVAL=2=3 is not what it should be'],
  // Undefined in the standard: a start that is no time of its rule (1 June 2026 is a Monday).
  ['FREQ=WEEKLY;BYDAY=TU', 'The start, 2026-06-01 09:00, is not a time of the rule'],
  ['FREQ=DAILY;BYHOUR=8', 'The start, 2026-06-01 09:00, is not a time of the rule'],
];

describe('what is no sound recurrence', () => {
  test.each(REFUSED)('%s is refused with a sentence', (rule, sentence) => {
    const read = readRecurrence({ rule, start: { date: '2026-06-01', time: '09:00' }, zone: NEW_YORK });
    expect(read.ok ? [] : read.reason).toEqual([expect.stringContaining(sentence)]);
  });

  test('the start of the Friday the 13th of RFC 5545, which is no time of its rule, is refused', () => {
    const start = { date: '1997-09-02', time: '09:00' };
    expect(readRecurrence({ rule: 'FREQ=MONTHLY;BYDAY=FR;BYMONTHDAY=13', start, zone: NEW_YORK }).ok).toBe(false);
  });

  test.each([
    ['day', '2026-02-30', '09:00', NEW_YORK],
    ['time', '2026-06-01', '25:00', NEW_YORK],
    ['zone', '2026-06-01', '09:00', 'Europe/Nowhere'],
  ])('a %s that does not exist is refused', (_what, date, time, zone) => {
    const read = readRecurrence({ rule: 'FREQ=DAILY', start: { date, time }, zone });
    expect(read).toEqual({ ok: false, reason: [`There is no ${date} ${time} in ${zone}.`] });
  });
});
