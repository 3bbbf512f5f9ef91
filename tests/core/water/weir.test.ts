import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fromCubicMetresPerSecond } from '#core/units/flow';
import { weirFlow, weirFlowLaw, weirHead, weirHeadLaw } from '#core/water/weir';
import { argument, cases, miss } from './reference';

test.each(cases('weir'))('published table, two contractions: %s', (_name, row) => {
  const flow = weirFlow(argument(row, 0), argument(row, 1), argument(row, 2));
  expect(miss(row, fromCubicMetresPerSecond(flow, 'galUS/min'))).toBeLessThanOrEqual(1);
});

describe('Francis’ constant', () => {
  test('is 3.33 in feet within 0.1 %', () => {
    const feet = 3.33 * 3.28084 * 0.328084 ** 1.5 * 0.3048 ** 3;
    expect(Math.abs(weirFlow(1, 0.1, 0) / feet - 1)).toBeLessThan(1e-3);
  });

  test('is a discharge coefficient of 0.623 within 0.1 %', () => {
    // curioustab.com, general equation 63239: 2/3 · Cd · √(2g) = 1.84 at Cd 0.623.
    const general = (2 / 3) * 0.623 * Math.sqrt(2 * 9.80665) * 0.1 ** 1.5;
    expect(Math.abs(weirFlow(1, 0.1, 0) / general - 1)).toBeLessThan(1e-3);
  });
});

test('contractions shorten the edge by a tenth of the head each, and are not divided by ten as a whole', () => {
  expect(weirFlow(1, 0.1, 0)).toBeCloseTo(0.05819, 5);
  expect(weirFlow(1, 0.1, 2)).toBeCloseTo(0.05702, 5);
  const trap = 1.84 * ((1 - 2 * 0.1) / 10) * 0.1 ** 1.5;
  expect(weirFlow(1, 0.1, 2) / trap).toBeGreaterThan(10);
});

test('an edge of 0.3 m carries 1, 2, 5, 10 and 20 m³/h at 6.3, 10.0, 18.5, 29.4 and 46.6 mm', () => {
  const heads = [1, 2, 5, 10, 20].map((flow) => (1000 * weirHead(0.3, flow / 3600)).toFixed(1));
  expect(heads).toEqual(['6.3', '10.0', '18.5', '29.4', '46.6']);
});

test('head and flow are each other’s inverse', () => {
  const length = fc.double({ min: 0.02, max: 10, noNaN: true });
  const flow = fc.double({ min: 1e-6, max: 0.1, noNaN: true });
  fc.assert(fc.property(length, flow, (l, q) => Math.abs(weirFlow(l, weirHead(l, q), 0) / q - 1) < 1e-9));
});

test('an edge too short for its head is refused at the edge, and never flows backwards inside', () => {
  expect(() => weirFlowLaw.checked(0.1, 0.05, 0)).toThrow('not below a third');
  expect(() => weirHeadLaw.checked(0.05, 0.01)).toThrow('too much for an edge');
  expect(weirFlow(0.1, 10, 2)).toBe(0);
  expect(weirFlow(1, -0.1, 0)).toBe(0);
  expect(weirHead(0, 1)).toBe(weirHead(1e-6, 1));
});
