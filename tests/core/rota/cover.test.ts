import { taker } from '#core/equipment/take';
import type { Facility } from '#core/facility/facility';
import type { Day } from '#core/facility/site';
import { type Cover, coverOf, hoursWithNobody, reachedAfter, staffed } from '#core/rota/cover';
import type { Shift } from '#core/rota/rota';
import { weekSecond } from '#core/time/week';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { facility, person, shift, site } from '../../_support/build-facility';
import { unknown } from '../../_support/given';
import { anyPeople, anyShift, anyShifts } from './any-rota';
import { isOn, quickest, tried } from './by-the-minute';

const MIN = 60;

/** Robin lives 25 min away, Sam 40 min; 10 min to answer on site, 20 min from home. */
const at = (shifts: Shift[]): Facility => facility({ shifts });
const cover = (shifts: Shift[]): Cover => coverOf(at(shifts), taker('nominal'));
const called = (day: Day, time: string) => weekSecond(day, time);
/** Minutes until somebody stands there when the rota is called. */
const minutes = (of: Cover, day: Day, time: string) =>
  (reachedAfter(of, called(day, time), 'rota') ?? Number.NaN) / MIN;

describe('a shift over midnight', () => {
  const nights = cover([shift({ key: 'n', days: ['fri'], from: '22:00', to: '06:00' })]);

  test('lasts until the morning of the next day and not a second longer', () => {
    expect(staffed(nights, called('fri', '22:00'))).toBe(true);
    expect(staffed(nights, called('sat', '05:59'))).toBe(true);
    expect(staffed(nights, called('sat', '06:00'))).toBe(false);
    expect(staffed(nights, called('fri', '21:59'))).toBe(false);
    expect(staffed(nights, called('fri', '05:00'))).toBe(false);
  });

  test('answers at once while it lasts', () => {
    expect(minutes(nights, 'sat', '03:00')).toBe(10);
  });
});

describe('a shift over the end of the week', () => {
  const sundays = cover([shift({ key: 'n', days: ['sun'], from: '20:00', to: '08:00' })]);

  test('is still on in the first hours of Monday', () => {
    expect(staffed(sundays, called('sun', '23:59'))).toBe(true);
    expect(staffed(sundays, called('mon', '00:00'))).toBe(true);
    expect(staffed(sundays, called('mon', '07:59'))).toBe(true);
    expect(staffed(sundays, called('mon', '08:00'))).toBe(false);
  });

  test('is waited for from the moment it is over: six days and a half', () => {
    expect(minutes(sundays, 'mon', '08:00')).toBe(6.5 * 24 * 60 + 10);
  });
});

test('a shift that ends when it begins lasts a whole day', () => {
  const whole = cover([shift({ days: ['wed'], from: '09:00', to: '09:00' })]);
  expect(staffed(whole, called('wed', '09:00'))).toBe(true);
  expect(staffed(whole, called('thu', '08:59'))).toBe(true);
  expect(staffed(whole, called('thu', '09:00'))).toBe(false);
  expect(hoursWithNobody(whole)).toHaveLength(144);
});

describe('who comes', () => {
  test('somebody on call answers from home: time to answer plus the way', () => {
    const onCall = cover([shift({ kind: 'on-call', people: ['sam'] })]);
    expect(minutes(onCall, 'mon', '12:00')).toBe(20 + 40);
    expect(staffed(onCall, called('mon', '12:00'))).toBe(false);
  });

  test('of several on call the one with the shortest way counts', () => {
    expect(minutes(cover([shift({ kind: 'on-call', people: ['sam', 'robin'] })]), 'mon', '12:00')).toBe(20 + 25);
  });

  test('somebody on site is quicker than anybody on call', () => {
    const both = cover([shift({ people: ['sam'] }), shift({ key: 'c', kind: 'on-call', people: ['robin'] })]);
    expect(minutes(both, 'mon', '12:00')).toBe(10);
  });

  test('with nobody on duty the message waits for the next duty', () => {
    expect(minutes(cover([shift({ days: ['tue'], from: '08:00', to: '18:00' })]), 'mon', '20:00')).toBe(12 * 60 + 10);
  });

  test('somebody who comes on duty soon is waited for when that is quicker than the way of whoever is on call', () => {
    const soon = cover([shift({ from: '08:00' }), shift({ key: 'c', kind: 'on-call', people: ['sam'] })]);
    expect(minutes(soon, 'mon', '08:00')).toBe(10);
    const before = cover([
      shift({ from: '08:00', to: '18:00' }),
      shift({ key: 'c', kind: 'on-call', people: ['sam'], from: '18:00', to: '08:00' }),
    ]);
    expect(minutes(before, 'mon', '07:30')).toBe(30 + 10);
    expect(minutes(before, 'mon', '06:30')).toBe(60);
  });

  test('without any shift nobody ever comes', () => {
    expect(reachedAfter(cover([]), 0, 'rota')).toBeNull();
    expect(hoursWithNobody(cover([]))).toHaveLength(168);
  });

  test('a shift of somebody the site does not know brings nobody', () => {
    expect(
      reachedAfter(cover([shift({ kind: 'on-call', people: ['stranger'] })]), called('mon', '12:00'), 'rota'),
    ).toBeNull();
  });
});

describe('people who are named', () => {
  const days = cover([shift({ people: ['robin'] })]);

  test('answer at any hour, from home when they are not on site', () => {
    expect(reachedAfter(days, called('mon', '03:00'), ['robin'])).toBe(45 * MIN);
    expect(reachedAfter(days, called('mon', '12:00'), ['sam'])).toBe(60 * MIN);
    expect(reachedAfter(days, called('mon', '03:00'), ['sam', 'robin'])).toBe(45 * MIN);
  });

  test('answer from the premises while they are on site', () => {
    expect(reachedAfter(days, called('mon', '12:00'), ['robin'])).toBe(10 * MIN);
    expect(reachedAfter(days, called('mon', '07:40'), ['robin'])).toBe(30 * MIN);
  });

  test('that the site does not know, or none at all, never come', () => {
    expect(reachedAfter(days, called('mon', '12:00'), ['stranger'])).toBeNull();
    expect(reachedAfter(days, called('mon', '12:00'), [])).toBeNull();
  });

  test('are not replaced by whoever is on duty', () => {
    expect(reachedAfter(days, called('mon', '12:00'), ['sam'])).toBe(60 * MIN);
    expect(reachedAfter(days, called('mon', '12:00'), 'nobody')).toBeNull();
  });
});

test('an unknown way is taken as the default, and on the bad side as its long end', () => {
  const shifts = [shift({ kind: 'on-call', people: ['robin'] })];
  const far = facility({ people: [person({ travelMin: unknown() })], shifts });
  const response = (side: 'nominal' | 'warm' | 'cold') =>
    (reachedAfter(coverOf(far, taker(side)), called('mon', '12:00'), 'rota') ?? 0) / MIN;
  expect(response('nominal')).toBe(20 + 30);
  expect(response('warm')).toBe(20 + 60);
  expect(response('cold')).toBe(20 + 60);
});

test('hours with nobody are those at whose beginning no duty is on', () => {
  const gaps = cover([
    shift({ days: ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'], from: '07:30', to: '22:00' }),
    shift({ key: 'n', kind: 'on-call', days: ['sat'], from: '22:00', to: '07:30' }),
  ]);
  const empty = hoursWithNobody(gaps);
  expect(empty).toHaveLength(6 * 10);
  expect(empty.slice(0, 9)).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 22]);
  // Saturday night into Sunday is covered.
  expect(empty.filter((h) => h > 5 * 24 + 21 && h < 6 * 24 + 22)).toEqual([]);
});

describe('against every minute of the week tried one by one', () => {
  const anySite = fc.record({ people: anyPeople(), shifts: anyShifts() });

  test('the response of the rota is the same at all 168 hours', () => {
    fc.assert(
      fc.property(anySite, fc.integer({ min: 0, max: 59 }), (given, past) => {
        const base = facility({ ...given, site: site({ answerOnSiteMin: 7, answerOnCallMin: 13 }) });
        const made = coverOf(base, taker('nominal'));
        const needed = quickest(base);
        for (let hour = 0; hour < 168; hour++) {
          const minute = hour * 60 + past;
          const best = tried(needed, minute);
          expect(reachedAfter(made, minute * MIN, 'rota')).toBe(Number.isFinite(best) ? best * MIN : null);
        }
      }),
      { numRuns: 60 },
    );
  });

  test('whether somebody is on site, and which hours have nobody, are the same', () => {
    fc.assert(
      fc.property(anySite, (given) => {
        const made = coverOf(facility(given), taker('nominal'));
        const hours = Array.from({ length: 168 }, (_, h) => h);
        const onSite = (h: number) => given.shifts.some((one) => one.kind === 'on-site' && isOn(one, h * 60));
        expect(hours.map((h) => staffed(made, h * 3600))).toEqual(hours.map(onSite));
        expect(hoursWithNobody(made)).toEqual(hours.filter((h) => !given.shifts.some((one) => isOn(one, h * 60))));
      }),
      { numRuns: 60 },
    );
  });

  test('one more shift never makes anybody come later', () => {
    fc.assert(
      fc.property(anySite, anyShift('more'), fc.integer({ min: 0, max: 10_079 }), (given, more, minute) => {
        const before = reachedAfter(coverOf(facility(given), taker('nominal')), minute * MIN, 'rota');
        const after = reachedAfter(
          coverOf(facility({ ...given, shifts: [...given.shifts, more] }), taker('nominal')),
          minute * MIN,
          'rota',
        );
        expect(after ?? Number.POSITIVE_INFINITY).toBeLessThanOrEqual(before ?? Number.POSITIVE_INFINITY);
      }),
    );
  });
});
