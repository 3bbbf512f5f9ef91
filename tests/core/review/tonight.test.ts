import { hoursTonight, leastIn, spareHours } from '#core/review/tonight';
import { instantOf } from '#core/time/zone';
import { describe, expect, test } from 'vitest';

const hours = (date: string, time: string) => hoursTonight('Europe/London', instantOf('Europe/London', date, time));

describe('the hours of a night', () => {
  // 2026-06-01 is a Monday; hour 0 is Monday 00:00.
  test.each([
    ['2026-06-01', '18:30', 18, 24 + 6, 13],
    ['2026-06-01', '06:00', 6, 24 + 6, 25],
    ['2026-06-01', '05:59', 5, 6, 2],
    ['2026-06-01', '00:00', 0, 6, 7],
  ])('on %s at %s run from the hour it is to the last before seven', (date, time, first, last, count) => {
    const all = hours(date, time);
    expect([all[0], all.at(-1), all.length]).toEqual([first, last, count]);
  });

  test('run from Sunday into Monday, and are as many on a night on which the clocks change', () => {
    expect(hours('2026-06-07', '22:00')).toEqual([166, 167, 0, 1, 2, 3, 4, 5, 6]);
    expect(hours('2026-03-28', '22:00')).toHaveLength(9);
    expect(hours('2026-10-24', '22:00')).toHaveLength(9);
  });
});

describe('the least time to spare', () => {
  test('is that of the hour with the least, and nobody coming is less than any', () => {
    expect(leastIn([5, -3, 'none', null, 9], [0, 1, 2])).toEqual({ spareS: -3, hour: 1 });
    expect(leastIn([5, -3, 'none', null, 9], [0, 1, 2, 3, 4])).toEqual({ spareS: null, hour: 3 });
    expect(leastIn([5, -3, 'none', null, 9], [4, 0])).toEqual({ spareS: 5, hour: 0 });
    expect(leastIn(['none', 4], [0])).toBeNull();
  });

  test('tells an hour in which nothing is harmed from one in which nobody comes', () => {
    expect(spareHours({ harmS: [null, 60, 60], spareS: [null, null, 12.4] })).toEqual(['none', null, 12]);
  });
});
