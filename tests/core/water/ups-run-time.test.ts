import fc from 'fast-check';
import { expect, test } from 'vitest';
import { upsRunTime } from '#core/water/ups-run-time';
import { argument, cases, miss } from './reference';

test.each(cases('ups-run-time'))('published examples: %s', (_name, row) => {
  const [volts, ampHours, batteries, depth, efficiency, ageing, load] = [0, 1, 2, 3, 4, 5, 6].map((i) =>
    argument(row, i),
  ) as [number, number, number, number, number, number, number];
  const hours = upsRunTime(volts, ampHours, batteries, depth, efficiency, ageing, load) / 3600;
  expect(miss(row, hours)).toBeLessThanOrEqual(1);
});

test('two 12 V batteries of 9 Ah, half used at 90 %, carry 150 W for 38.9 min', () => {
  const seconds = upsRunTime(12, 9, 2, 0.5, 0.9, 1, 150);
  expect(seconds).toBeCloseTo((12 * 9 * 2 * 0.5 * 0.9 * 3600) / 150, 9);
  expect(seconds / 60).toBeCloseTo(38.9, 1);
});

test('twice the load lasts half as long, and an old battery as much less as it has aged', () => {
  const part = fc.double({ min: 0.05, max: 1, noNaN: true });
  const load = fc.double({ min: 1, max: 1e5, noNaN: true });
  fc.assert(
    fc.property(part, load, (ageing, watts) => {
      const fresh = upsRunTime(12, 9, 2, 0.5, 0.9, 1, watts);
      expect(upsRunTime(12, 9, 2, 0.5, 0.9, 1, 2 * watts) / fresh).toBeCloseTo(0.5, 12);
      expect(upsRunTime(12, 9, 2, 0.5, 0.9, ageing, watts) / fresh).toBeCloseTo(ageing, 12);
    }),
  );
});

test('no battery lasts no time at any load, and a battery without load for ever', () => {
  expect(upsRunTime(12, 0, 2, 0.5, 0.9, 1, 0)).toBe(0);
  expect(upsRunTime(12, 9, 2, 0.5, 0.9, 1, 0)).toBe(Number.POSITIVE_INFINITY);
});
