import { type RestRule, restWarnings } from '#core/rota/rest';
import { dayStart } from '#core/time/zone';
import { DAYS, type Day } from '#core/facility/site';
import { describe, expect, test } from 'vitest';
import { person, shift } from '../../_support/build-facility';

const people = [person({ key: 'ada', name: 'Ada' })];
const of = (key: string, days: readonly Day[], from: string, to: string, kind: 'on-site' | 'on-call' = 'on-site') =>
  shift({ key, kind, people: ['ada'], days: [...days], from, to });

const warned = (shifts: ReturnType<typeof of>[], zone = 'Europe/London', first = '2026-06-01', days = 28) => {
  const from = dayStart(zone, first);
  return restWarnings({ site: { zone }, people, shifts, exceptions: [] }, from, from + days * 86_400_000);
};
const rules = (...given: Parameters<typeof warned>): RestRule[] => warned(...given).map(({ rule }) => rule);

// Sources: 2003/88/EC for rest and the weekly average; HSG256 for the rest. The cases were worked out from the rules.
describe('rest that may be too short', () => {
  // 2026-06-01 is a Monday.
  test.each([
    ['09:00', ['daily-rest'], 10],
    ['10:00', [], undefined],
  ] as const)('between a shift that ends Monday 23:00 and one at %s on Tuesday', (next, expected, comesTo) => {
    const found = warned([of('late', ['mon'], '15:00', '23:00'), of('early', ['tue'], next, '17:00')]);
    expect(found.map(({ rule }) => rule)).toEqual(expected);
    expect(found[0]?.comesTo).toBe(comesTo);
  });

  test('within seven shifts from Monday to Sunday, 09:00 to 17:00', () => {
    const found = warned([of('day', DAYS, '09:00', '17:00')]);
    expect(found).toMatchObject([
      { rule: 'weekly-rest', comesTo: 16, times: 28 },
      { rule: 'weekly-hours', comesTo: 56 },
      // The seventh day, 2026-06-07 at 09:00 in summer time, is the first too many.
      { rule: 'days-in-a-row', comesTo: 28, times: 1, at: Date.UTC(2026, 5, 7, 8) },
    ]);
  });

  test.each([
    ['2026-03-07', ['daily-rest'], 10],
    ['2026-10-31', [], undefined],
    ['2026-06-06', [], undefined],
  ] as const)(
    'over the night of Saturday %s in New York, from 22:00 to 09:00, by its true length',
    (saturday, expected, comesTo) => {
      const shifts = [of('late', ['sat'], '14:00', '22:00'), of('early', ['sun'], '09:00', '13:00')];
      const found = warned(shifts, 'America/New_York', saturday, 2);
      expect(found.map(({ rule }) => rule)).toEqual(expected);
      expect(found[0]?.comesTo).toBe(comesTo);
    },
  );

  test('is not found in a week of five days, nor in one that is split by noon', () => {
    const week = DAYS.slice(0, 5);
    expect(rules([of('day', week, '08:00', '17:00')])).toEqual([]);
    expect(rules([of('morning', week, '08:00', '12:00'), of('evening', week, '16:00', '20:00')])).toEqual([]);
  });
});

describe('work that may be too long', () => {
  test('is a shift of more than twelve hours, also one made of two', () => {
    expect(rules([of('day', ['mon'], '06:00', '18:00')])).toEqual([]);
    const two = [of('a', ['mon'], '06:00', '13:00'), of('b', ['mon'], '13:00', '18:30')];
    expect(warned(two)).toMatchObject([{ rule: 'long-shift', comesTo: 12.5, times: 4 }]);
  });

  test('is more than four nights in a row, and more than six days', () => {
    expect(rules([of('night', DAYS.slice(0, 4), '22:00', '06:00')])).toEqual([]);
    expect(warned([of('night', DAYS.slice(0, 5), '22:00', '06:00')])).toMatchObject([
      { rule: 'nights-in-a-row', comesTo: 5, times: 4 },
    ]);
    // From 03:00 on, three hours of the night are left; from 03:30, fewer.
    expect(rules([of('early', DAYS.slice(0, 5), '03:00', '09:00')])).toEqual(['nights-in-a-row']);
    expect(rules([of('early', DAYS.slice(0, 5), '03:30', '09:00')])).toEqual([]);
  });

  test('is no call from home', () => {
    expect(rules([of('call', DAYS, '17:00', '08:00', 'on-call')])).toEqual([]);
  });
});
