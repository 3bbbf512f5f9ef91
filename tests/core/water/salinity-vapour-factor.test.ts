import { expect, test } from 'vitest';
import { salinityVapourFactor } from '#core/water/salinity-vapour-factor';
import { argument, cases, miss } from './reference';

test.each(cases('salinity-vapour-factor'))('TEOS-10: %s', (_name, row) => {
  expect(miss(row, salinityVapourFactor(argument(row, 0)))).toBeLessThanOrEqual(1);
});

test('fresh water has all of its vapour, sea water 1.9 % less', () => {
  expect(salinityVapourFactor(0)).toBe(1);
  expect(1 - salinityVapourFactor(35)).toBeCloseTo(0.019, 3);
});

test('no salt can make it negative or raise it', () => {
  expect(salinityVapourFactor(-50)).toBe(1);
  expect(salinityVapourFactor(1e6)).toBe(salinityVapourFactor(300));
});
