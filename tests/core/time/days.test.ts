import { dayNumber, daysBetween } from '#core/time/days';
import fc from 'fast-check';
import { expect, test } from 'vitest';

const DAY_MS = 86_400_000;
const iso = (year: number, month: number, day: number) =>
  `${year}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`;

test('day numbers agree with the calendar of the language on every first and last day of a month from 1600 to 2400', () => {
  for (let year = 1600; year <= 2400; year++) {
    for (let month = 1; month <= 12; month++) {
      const first = Date.UTC(year, month - 1, 1);
      expect(dayNumber(iso(year, month, 1))).toBe(first / DAY_MS);
      const last = new Date(Date.UTC(year, month, 1) - DAY_MS);
      expect(dayNumber(last.toISOString().slice(0, 10))).toBe(last.getTime() / DAY_MS);
    }
  }
});

test('day numbers agree on any day from 1600 to 2400', () => {
  const day = fc.integer({ min: Date.UTC(1600, 0, 1) / DAY_MS, max: Date.UTC(2400, 11, 31) / DAY_MS });
  fc.assert(
    fc.property(day, (n) => dayNumber(new Date(n * DAY_MS).toISOString().slice(0, 10)) === n),
    { numRuns: 2000 },
  );
});

test.each([
  [1900, 365],
  [2000, 366],
  [2023, 365],
  [2024, 366],
  [2100, 365],
  [2400, 366],
])('the year %i has %i days', (year, days) => {
  expect(daysBetween(iso(year, 1, 1), iso(year + 1, 1, 1))).toBe(days);
  expect(daysBetween(iso(year, 2, 28), iso(year, 3, 1))).toBe(days - 364);
});

test('days are counted from 1970 and backwards before it', () => {
  expect(dayNumber('1970-01-01')).toBe(0);
  expect(dayNumber('1969-12-31')).toBe(-1);
  expect(daysBetween('2026-03-02', '2026-02-28')).toBe(-2);
  expect(daysBetween('2026-03-02', '2026-03-02')).toBe(0);
});
