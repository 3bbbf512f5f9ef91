import { DAYS } from '#core/facility/site';
import type { Shift } from '#core/rota/rota';
import { standing, type WalkDue, walksDue } from '#core/rounds/due';
import type { RoundSlot } from '#core/rounds/slot';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

const slot = (over: Partial<RoundSlot> = {}): RoundSlot => ({
  key: 'morning',
  name: 'Morning round',
  days: [...DAYS],
  at: '08:00',
  sees: ['equipment', 'animals'],
  ...over,
});
const day: Shift = { key: 'day', kind: 'on-site', people: ['ada'], days: [...DAYS], from: '07:00', to: '16:00' };
const TWICE = [slot(), slot({ key: 'evening', name: 'Evening round', at: '18:00' })];

const utc = (at: number) => new Date(at).toISOString().slice(0, 16);
const only = (walks: WalkDue[]): WalkDue => {
  const [walk, ...more] = walks;
  if (!walk || more.length > 0) throw new Error(`${walks.length} walks`);
  return walk;
};

describe('when a walk is due', () => {
  // Source: the changes of the clocks in the IANA time zone database; the rule of RFC 5545 section 3.3.5.
  test.each([
    ['Europe/London', '2026-03-29', '01:30', '2026-03-29T01:30'],
    ['Europe/London', '2026-10-25', '01:30', '2026-10-25T00:30'],
    ['Europe/Berlin', '2026-03-29', '02:30', '2026-03-29T01:30'],
    ['Europe/Berlin', '2026-10-25', '02:30', '2026-10-25T00:30'],
    ['America/New_York', '2026-03-08', '02:30', '2026-03-08T07:30'],
    ['America/New_York', '2026-11-01', '01:30', '2026-11-01T05:30'],
    ['Australia/Sydney', '2026-10-04', '02:30', '2026-10-03T16:30'],
    ['America/Phoenix', '2026-03-08', '02:30', '2026-03-08T09:30'],
  ])('in %s on %s at %s it is due once, at %s', (zone, date, at, expected) => {
    const next = new Date(Date.parse(date) + 86_400_000).toISOString().slice(0, 10);
    expect(walksDue([slot({ at })], zone, date, next).map(({ dueAt }) => utc(dueAt))).toEqual([expected]);
  });

  test('a check of each shift is late two hours of elapsed time after, also over the night the clocks change', () => {
    // Walked at 00:30 and at 12:00; in London the clocks go from 01:00 to 02:00 that night.
    const two = [slot({ at: '00:30' }), slot({ key: 'noon', at: '12:00' })];
    const [first, second] = walksDue(two, 'Europe/London', '2026-03-29', '2026-03-30');
    expect([first?.dueAt, first?.lateAt].map((at) => utc(at ?? 0))).toEqual(['2026-03-29T00:30', '2026-03-29T02:30']);
    expect([second?.dueAt, second?.lateAt].map((at) => utc(at ?? 0))).toEqual(['2026-03-29T11:00', '2026-03-29T13:00']);
  });

  test('one that is walked once a day is late at the end of the shift it falls in, or of the day', () => {
    const inShift = only(walksDue([slot()], 'Europe/London', '2026-06-01', '2026-06-02', [day]));
    expect(utc(inShift.lateAt)).toBe('2026-06-01T15:00');
    const inNone = only(walksDue([slot()], 'Europe/London', '2026-06-01', '2026-06-02'));
    expect(utc(inNone.lateAt)).toBe('2026-06-01T23:00');
    // The day of 25 hours ends an hour later.
    const long = only(walksDue([slot()], 'Europe/London', '2026-10-25', '2026-10-26'));
    expect((long.lateAt - long.dueAt) / 3_600_000).toBe(16);
  });

  test('a weekly one is late a day later on the clocks, and missed when the next may be begun', () => {
    const weekly = slot({ key: 'tests', days: ['sat'], sees: ['salinity'] });
    const walk = only(
      walksDue([...TWICE, weekly], 'Europe/London', '2026-03-28', '2026-03-29').filter(
        ({ slot: { key } }) => key === 'tests',
      ),
    );
    expect([walk.dueAt, walk.lateAt, walk.closesAt].map(utc)).toEqual([
      '2026-03-28T08:00',
      // Twenty-three hours later: the clocks went forward.
      '2026-03-29T07:00',
      '2026-04-04T06:00',
    ]);
  });

  test('several rounds that look at the same are one check of each shift, whichever days they are walked on', () => {
    const week = slot({ days: ['mon', 'tue', 'wed', 'thu', 'fri', 'sat'] });
    const sunday = slot({ key: 'sunday', days: ['sun'], at: '10:00' });
    // A Sunday: once that day, and each day of the week is looked at, so it is a daily check and no weekly one.
    const walk = only(walksDue([week, sunday], 'UTC', '2026-06-07', '2026-06-08'));
    expect([walk.lateAt, walk.closesAt].map(utc)).toEqual(['2026-06-08T00:00', '2026-06-08T07:00']);
  });

  test('a walk is missed when one that looks at all of it may be begun, and not for one that looks at less', () => {
    const less = slot({ key: 'less', at: '12:00', sees: ['animals'] });
    const walks = walksDue([...TWICE, less], 'UTC', '2026-06-01', '2026-06-02');
    expect(walks.map(({ slot: { key }, closesAt }) => `${key} ${utc(closesAt)}`)).toEqual([
      'morning 2026-06-01T17:00',
      'less 2026-06-01T17:00',
      'evening 2026-06-02T07:00',
    ]);
    const elsewhere = [slot(), slot({ key: 'other', at: '12:00', systems: ['reef'] })];
    expect(utc(walksDue(elsewhere, 'UTC', '2026-06-01', '2026-06-02')[0]?.closesAt ?? 0)).toBe('2026-06-02T07:00');
  });

  test('of two that lie close together the first can still be walked until half-way to the second', () => {
    const close = [slot(), slot({ key: 'again', at: '08:40' })];
    const [first] = walksDue(close, 'UTC', '2026-06-01', '2026-06-02');
    expect([first?.lateAt, first?.closesAt].map((at) => utc(at ?? 0))).toEqual([
      '2026-06-01T08:20',
      '2026-06-01T08:20',
    ]);
  });

  test('a day that the place left out of its calendar has no rounds', () => {
    // Source: the IANA time zone database; Samoa went from 29 to 31 December 2011.
    const dates = walksDue([slot()], 'Pacific/Apia', '2011-12-28', '2012-01-01').map(({ date }) => date);
    expect(dates).toEqual(['2011-12-28', '2011-12-29', '2011-12-31']);
  });

  test('whatever the timetable and the zone, a walk opens, is due, is late and closes in this order', () => {
    const time = fc.tuple(fc.nat(23), fc.nat(59)).map((t) => t.map((n) => String(n).padStart(2, '0')).join(':'));
    const any = fc.record({
      at: time,
      days: fc.subarray([...DAYS], { minLength: 1 }),
      sees: fc.subarray(['equipment', 'animals', 'floor'] as const, { minLength: 1 }),
    });
    const zones = fc.constantFrom('Europe/London', 'America/New_York', 'Australia/Lord_Howe', 'Pacific/Apia');
    const dates = fc.constantFrom('2026-03-05', '2026-03-25', '2026-10-01', '2026-10-22', '2011-12-27');
    fc.assert(
      fc.property(fc.array(any, { minLength: 1, maxLength: 4 }), zones, dates, (given, zone, from) => {
        const slots = given.map((one, index) => slot({ ...one, key: `slot-${index}` }));
        const to = new Date(Date.parse(from) + 7 * 86_400_000).toISOString().slice(0, 10);
        for (const walk of walksDue(slots, zone, from, to, [day])) {
          expect(walk.opensAt).toBeLessThan(walk.dueAt);
          expect(walk.dueAt).toBeLessThanOrEqual(walk.lateAt);
          expect(walk.lateAt).toBeLessThanOrEqual(walk.closesAt);
        }
      }),
      { numRuns: 60 },
    );
  });
});

describe('how a walk stands', () => {
  const walk = { opensAt: 100, lateAt: 300, closesAt: 500 };
  test.each([
    [null, null, 99, 'ahead'],
    [null, null, 100, 'due'],
    [null, null, 299, 'due'],
    [null, null, 300, 'late'],
    [null, null, 499, 'late'],
    [null, null, 500, 'missed'],
    [120, null, 299, 'begun'],
    [120, null, 300, 'late'],
    [120, null, 9999, 'late'],
    [120, 140, 9999, 'done'],
  ] as const)('begun at %s, signed at %s, at %s: %s', (begunAt, signedAt, now, expected) => {
    expect(standing(walk, begunAt, signedAt, now)).toBe(expected);
  });
});
