import { dayLengthMin, dayStart, instantOf, instantsOf, wallClock } from '#core/time/zone';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

const at = (words: string) => Date.parse(words);

// Source: RFC 5545 section 3.3.5 for the rule (its own two examples are the 2007 rows); the 2026 moments from the IANA time
// zone database.
const TABLE: [zone: string, date: string, time: string, moments: string[], shown: string][] = [
  ['America/New_York', '2007-03-11', '02:30', ['2007-03-11T07:30Z'], '2007-03-11 03:30 -04:00'],
  ['America/New_York', '2007-11-04', '01:30', ['2007-11-04T05:30Z', '2007-11-04T06:30Z'], '2007-11-04 01:30 -04:00'],
  ['America/New_York', '2026-03-08', '02:30', ['2026-03-08T07:30Z'], '2026-03-08 03:30 -04:00'],
  ['America/New_York', '2026-11-01', '01:30', ['2026-11-01T05:30Z', '2026-11-01T06:30Z'], '2026-11-01 01:30 -04:00'],
  ['Europe/London', '2026-03-29', '01:30', ['2026-03-29T01:30Z'], '2026-03-29 02:30 +01:00'],
  ['Europe/London', '2026-10-25', '01:30', ['2026-10-25T00:30Z', '2026-10-25T01:30Z'], '2026-10-25 01:30 +01:00'],
  ['Europe/Berlin', '2026-03-29', '02:30', ['2026-03-29T01:30Z'], '2026-03-29 03:30 +02:00'],
  ['Europe/Berlin', '2026-10-25', '02:30', ['2026-10-25T00:30Z', '2026-10-25T01:30Z'], '2026-10-25 02:30 +02:00'],
  ['Australia/Sydney', '2026-10-04', '02:30', ['2026-10-03T16:30Z'], '2026-10-04 03:30 +11:00'],
  ['Australia/Sydney', '2026-04-05', '02:30', ['2026-04-04T15:30Z', '2026-04-04T16:30Z'], '2026-04-05 02:30 +11:00'],
  ['Australia/Lord_Howe', '2026-10-04', '02:15', ['2026-10-03T15:45Z'], '2026-10-04 02:45 +11:00'],
  ['America/Phoenix', '2026-03-08', '02:30', ['2026-03-08T09:30Z'], '2026-03-08 02:30 -07:00'],
];

describe('a time on the wall', () => {
  test.each(TABLE)('in %s on %s at %s is the moment it should be', (zone, date, time, moments, shown) => {
    expect(instantOf(zone, date, time)).toBe(at(moments[0] ?? ''));
    expect(instantsOf(zone, date, time)).toEqual(moments.map(at));
    const { date: day, time: clock, offset } = wallClock(zone, instantOf(zone, date, time));
    expect(`${day} ${clock} ${offset}`).toBe(shown);
  });

  test('that a repeated hour shows twice is told apart by its offset', () => {
    const twice = instantsOf('Europe/London', '2026-10-25', '01:30').map((moment) =>
      wallClock('Europe/London', moment),
    );
    expect(twice).toEqual([
      { date: '2026-10-25', time: '01:30', offset: '+01:00' },
      { date: '2026-10-25', time: '01:30', offset: '+00:00' },
    ]);
  });

  test('shows the minute that has begun, before 1970 too', () => {
    expect(wallClock('UTC', at('2026-03-08T07:30:59.999Z')).time).toBe('07:30');
    expect(wallClock('UTC', at('1969-12-31T23:59:30Z'))).toMatchObject({ date: '1969-12-31', time: '23:59' });
  });

  test.each([
    ['a zone', 'Europe/Nowhere', '2026-03-08', '02:30'],
    ['a date', 'Europe/London', '2026-02-30', '02:30'],
    ['a time', 'Europe/London', '2026-02-03', '24:30'],
  ])('is refused with a RangeError when there is no such %s', (_what, zone, date, time) => {
    expect(() => instantOf(zone, date, time)).toThrow(RangeError);
    expect(() => instantsOf(zone, date, time)).toThrow(RangeError);
  });
});

describe('a calendar day', () => {
  test.each([
    ['America/New_York', '2026-03-08', 23],
    ['America/New_York', '2026-11-01', 25],
    ['America/New_York', '2026-11-02', 24],
    ['Europe/London', '2026-03-29', 23],
    ['Australia/Lord_Howe', '2026-10-04', 23.5],
    ['America/Phoenix', '2026-03-08', 24],
    // Samoa left this day out when it moved across the date line (IANA time zone database, file australasia).
    ['Pacific/Apia', '2011-12-30', 0],
  ])('in %s, %s lasts %d h', (zone, date, hours) => {
    expect(dayLengthMin(zone, date)).toBe(hours * 60);
  });

  test('begins at one o’clock where the clocks leap at midnight', () => {
    // Lebanon goes forward at midnight (IANA time zone database, file asia).
    expect(wallClock('Asia/Beirut', dayStart('Asia/Beirut', '2026-03-29')).time).toBe('01:00');
    expect(dayLengthMin('Asia/Beirut', '2026-03-29')).toBe(23 * 60);
  });
});

describe('over the zones of the world', () => {
  const anyZone = fc.constantFrom(...Intl.supportedValuesOf('timeZone'));
  const anyMinute = fc.integer({ min: at('1990-01-01T00:00Z') / 60_000, max: at('2037-01-01T00:00Z') / 60_000 });

  test('a moment shows as the platform’s own calendar shows it', () => {
    // Beside Intl.DateTimeFormat: the same zone data, read by code that is not ours.
    fc.assert(
      fc.property(anyZone, anyMinute, (zone, minute) => {
        const { date, time } = wallClock(zone, minute * 60_000);
        const format = new Intl.DateTimeFormat('sv-SE', { timeZone: zone, dateStyle: 'short', timeStyle: 'short' });
        expect(`${date} ${time}`).toBe(format.format(minute * 60_000));
      }),
    );
  });

  test('a moment is among those at which its own time is shown', () => {
    fc.assert(
      fc.property(anyZone, anyMinute, (zone, minute) => {
        const { date, time } = wallClock(zone, minute * 60_000);
        // Before 1972 offsets had seconds; since then a clock shows whole minutes of UTC.
        expect(instantsOf(zone, date, time)).toContain(minute * 60_000);
      }),
    );
  });

  test('a day lasts from its first moment to the first of the next', () => {
    fc.assert(
      fc.property(anyZone, anyMinute, (zone, minute) => {
        const moment = minute * 60_000;
        const { date } = wallClock(zone, moment);
        const start = dayStart(zone, date);
        expect(start).toBeLessThanOrEqual(moment);
        expect(moment).toBeLessThan(start + dayLengthMin(zone, date) * 60_000);
      }),
    );
  });
});
