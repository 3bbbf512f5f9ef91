import { dayLengthMin, dayStart, instantOf, instantsOf, wallClock } from '#core/time/zone';
import fc from 'fast-check';
import { DateTime } from 'luxon';
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

describe('clocks that were asked for before', () => {
  const zones = fc.constantFrom(...Intl.supportedValuesOf('timeZone'));
  const [from, to] = [at('1965-01-01T00:00Z'), at('2040-01-01T00:00Z')];

  test('show the same the second time, and what luxon reads off the time zone database', () => {
    fc.assert(
      fc.property(zones, fc.integer({ min: from, max: to }), fc.nat(59_999), (zone, moment, later) => {
        for (const one of [moment, moment + later, moment]) {
          const { date, time } = wallClock(zone, one);
          expect(`${date} ${time}`).toBe(DateTime.fromMillis(one, { zone }).toFormat('yyyy-MM-dd HH:mm'));
        }
      }),
    );
  });

  // What makes a minute one thing to remember. Source: the IANA time zone database, as Node has it.
  test('are whole minutes from UTC at every place since 1973', () => {
    const odd = Intl.supportedValuesOf('timeZone').filter((timeZone) => {
      const clock = new Intl.DateTimeFormat('en', { timeZone, timeZoneName: 'longOffset' });
      const years = Array.from({ length: 68 }, (_, year) => [Date.UTC(1973 + year, 0), Date.UTC(1973 + year, 6)]);
      return years.flat().some((moment) => /GMT[+-]\d+:\d+:/.test(clock.format(moment)));
    });
    expect(odd).toEqual([]);
    const monrovia = new Intl.DateTimeFormat('en', { timeZone: 'Africa/Monrovia', timeZoneName: 'longOffset' });
    expect(monrovia.format(at('1971-07-01T00:00Z'))).toMatch(/GMT-00:44:30/);
  });
});
