import { expect, test } from 'vitest';
import { freezingPoint } from '#core/water/freezing-point';
import { argument, cases, miss } from './reference';

test.each(cases('freezing-point'))('freezing point: %s', (_name, row) => {
  expect(miss(row, freezingPoint(argument(row, 0)))).toBeLessThanOrEqual(1);
});

test('more salt always freezes later, and is held beyond 100', () => {
  for (let s = 0; s < 42; s++) expect(freezingPoint(s + 1)).toBeLessThan(freezingPoint(s));
  expect(freezingPoint(300)).toBe(freezingPoint(100));
});
