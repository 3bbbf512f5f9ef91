import { DAYS } from '#core/facility/site';
import { DAY, forward, HOUR, WEEK, weekSecond } from '#core/time/week';
import fc from 'fast-check';
import { expect, test } from 'vitest';

test('the week begins on Monday at 00:00 and ends on Sunday at 23:59', () => {
  expect(weekSecond('mon', '00:00')).toBe(0);
  expect(weekSecond('tue', '01:30')).toBe(DAY + 1.5 * HOUR);
  expect(weekSecond('sun', '23:59')).toBe(WEEK - 60);
});

test('going forward from one time to another arrives there within a week', () => {
  const second = fc.integer({ min: -2 * WEEK, max: 2 * WEEK });
  fc.assert(
    fc.property(second, second, (from, to) => {
      const way = forward(from, to);
      expect(way).toBeGreaterThanOrEqual(0);
      expect(way).toBeLessThan(WEEK);
      expect(Math.abs((from + way - to) % WEEK)).toBe(0);
    }),
  );
});

test('the same time of the next day is a day ahead, over the end of the week too', () => {
  for (const [i, day] of DAYS.entries()) {
    expect(forward(weekSecond(day, '10:15'), weekSecond(DAYS[(i + 1) % 7] ?? 'mon', '10:15'))).toBe(DAY);
  }
});
