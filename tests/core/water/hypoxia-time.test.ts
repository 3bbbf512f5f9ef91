import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { hypoxiaTime } from '#core/water/hypoxia-time';
import { integrate } from './numerics';

const HOUR = 3600;

/** Hours, from rates per hour, as the worked figures have them. */
function hours(start: number, critical: number, saturation: number, transfer: number, demand: number): number {
  return hypoxiaTime(start, critical, saturation, transfer / HOUR, demand / HOUR) / HOUR;
}

const state = fc.record({
  start: fc.double({ min: 5, max: 9, noNaN: true }),
  critical: fc.double({ min: 1, max: 4, noNaN: true }),
  saturation: fc.double({ min: 5, max: 11, noNaN: true }),
  transfer: fc.double({ min: 0, max: 20 / HOUR, noNaN: true }),
  demand: fc.double({ min: 0.01 / HOUR, max: 30 / HOUR, noNaN: true }),
});

test('without transfer is the way over the demand: 3.5 mg/L at 2 mg/L an hour, 1.75 h', () => {
  expect(hours(6.5, 3, 6.77, 0, 2)).toBeCloseTo(1.75, 12);
});

test('a densely stocked farm at 18 mg/L an hour has 16.7 min from 8 to 3 mg/L', () => {
  expect(60 * hours(8, 3, 8, 0, 18)).toBeCloseTo(16.7, 1);
});

test('with transfer is ln((C0 − C∞)/(Ccrit − C∞))/kLa', () => {
  for (const k of [0.05, 0.2, 0.5]) {
    const rest = 6.77 - 2 / k;
    expect(Math.abs(hours(6.5, 3, 6.77, k, 2) / (Math.log((6.5 - rest) / (3 - rest)) / k) - 1)).toBeLessThan(1e-9);
  }
  expect(hours(6.5, 3, 6.77, 0.05, 2)).toBeCloseTo(1.84438, 5);
  expect(hours(6.5, 3, 6.77, 0.5, 2)).toBeCloseTo(5.57217, 5);
});

test('a tiny transfer changes the time by a tiny bit, and not by cancellation', () => {
  expect(Math.abs(hours(6.5, 3, 6.77, 1e-12, 2) - 1.75)).toBeLessThan(1e-11);
});

describe('never', () => {
  test('is where transfer holds oxygen above the level, from C* − r/kLa = Ccrit on', () => {
    expect(hours(6.5, 3, 6.77, 0.6, 2)).toBe(Number.POSITIVE_INFINITY);
    expect(hours(6.5, 2.75, 6.75, 0.5, 2)).toBe(Number.POSITIVE_INFINITY);
    expect(hours(6.5, 2.75, 6.75, 0.499, 2)).toBeLessThan(100);
  });

  test('is where nothing breathes', () => {
    expect(hours(6.5, 3, 6.77, 0, 0)).toBe(Number.POSITIVE_INFINITY);
  });
});

test('is short but not nothing a hair above the level', () => {
  expect(hours(3.001, 3, 6.77, 0, 2)).toBeCloseTo(0.0005, 9);
});

test('is nothing when the level is already reached', () => {
  expect(hours(3, 3, 6.77, 0.5, 2)).toBe(0);
  expect(hours(2, 3, 6.77, 0.5, 2)).toBe(0);
});

test('lands on the level in the reference ODE library, to 1e-9', () => {
  fc.assert(
    fc.property(state, (s) => {
      const t = hypoxiaTime(s.start, s.critical, s.saturation, s.transfer, s.demand);
      fc.pre(Number.isFinite(t) && s.transfer * t < 20);
      const there = integrate((c) => s.transfer * (s.saturation - c) - s.demand, s.start, t);
      expect(Math.abs(there - s.critical)).toBeLessThan(1e-9);
    }),
    { numRuns: 60 },
  );
});

test('falls when more is breathed, and grows when more is transferred', () => {
  fc.assert(
    fc.property(state, (s) => {
      const time = (transfer: number, demand: number) =>
        hypoxiaTime(s.start, s.critical, s.saturation, transfer, demand);
      const here = time(s.transfer, s.demand);
      return (
        time(s.transfer, 1.1 * s.demand) <= here &&
        // While oxygen lies above saturation, transfer takes it out.
        (s.start > s.saturation || time(1.1 * s.transfer, s.demand) >= here * (1 - 1e-12))
      );
    }),
  );
});
