import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drainRate, GRAVITY } from '#core/water/drain-rate';
import { drainTime, drainTimeLaw } from '#core/water/drain-time';
import { integrate } from './numerics';
import { argument, cases, miss } from './reference';

const area = fc.double({ min: 0.05, max: 20, noNaN: true });
const opening = fc.double({ min: 1e-4, max: 1e-2, noNaN: true });
const head = fc.double({ min: 0.2, max: 3, noNaN: true });

test.each(cases('drain-rate'))('the rate: %s', (_name, row) => {
  expect(miss(row, drainRate(argument(row, 0), argument(row, 1), argument(row, 2)))).toBeLessThanOrEqual(1);
});

test.each(cases('drain-time'))('the time: %s', (_name, row) => {
  const [tank, coefficient, hole, from, to] = row.at as [number, number, number, number, number];
  expect(miss(row, drainTime(tank, coefficient, hole, from, to))).toBeLessThanOrEqual(1);
});

describe('the time to drain', () => {
  test('is twice what the first rate would take, and not the same: the half-time trap', () => {
    const volume = 1 * 2;
    expect(drainTime(1, 0.62, 0.01, 2, 0)).toBeCloseTo((2 * volume) / drainRate(0.62, 0.01, 2), 9);
    const trap = Math.sqrt(2) / (0.62 * 0.01 * Math.sqrt(2 * GRAVITY));
    expect(drainTime(1, 0.62, 0.01, 2, 0) / trap).toBeCloseTo(2, 9);
  });

  test('a 0.72 m² tank through a 25 mm hose at 0.5 falls from 1 to 0.8 m of head in 2.33 min', () => {
    expect(drainTime(0.72, 0.5, (Math.PI * 0.025 ** 2) / 4, 1, 0.8) / 60).toBeCloseTo(2.33, 2);
  });

  test('ends where the reference ODE library ends, to 1e-9', () => {
    fc.assert(
      fc.property(area, opening, head, fc.double({ min: 0.1, max: 0.95, noNaN: true }), (a, o, from, part) => {
        const to = part * from;
        const there = integrate((h) => -drainRate(0.6, o, h) / a, from, drainTime(a, 0.6, o, from, to));
        expect(Math.abs(there - to)).toBeLessThan(1e-9);
      }),
      { numRuns: 40 },
    );
  });

  test('adds up: by way of a level between takes as long', () => {
    fc.assert(
      fc.property(area, opening, head, (a, o, h) => {
        const whole = drainTime(a, 0.6, o, h, h / 4);
        const parts = drainTime(a, 0.6, o, h, h / 2) + drainTime(a, 0.6, o, h / 2, h / 4);
        return Math.abs(parts / whole - 1) < 1e-9;
      }),
    );
  });

  test('counts the last millimetre, and the smallest tank', () => {
    const rate = drainRate(0.6, 1e-4, 0.5);
    expect(drainTime(1, 0.6, 1e-4, 0.5, 0.499) / (1e-3 / rate)).toBeCloseTo(1, 2);
    expect(drainTime(0.005, 0.6, 1e-4, 0.5, 0.499) / (5e-6 / rate)).toBeCloseTo(1, 2);
  });

  test('is nothing when there is nothing to fall, and never when nothing can run out', () => {
    expect(drainTime(1, 0.6, 0.01, 1, 1)).toBe(0);
    expect(drainTime(1, 0.6, 0, 1, 0)).toBe(Number.POSITIVE_INFINITY);
    expect(() => drainTimeLaw.checked(1, 0.6, 0.01, 1, 1.5)).toThrow('above the head');
  });
});

test('no head, no flow', () => {
  expect(drainRate(0.6, 0.01, 0)).toBe(0);
  expect(drainRate(0.6, 0.01, -1)).toBe(0);
});
