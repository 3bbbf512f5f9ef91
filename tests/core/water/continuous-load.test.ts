import { expect, test } from 'vitest';
import { CONTINUOUS_SHARE, continuousLoad } from '#core/water/continuous-load';
import { argument, cases, miss } from './reference';

test.each(cases('continuous-load'))('the 80 %% rule: %s', (_name, row) => {
  expect(miss(row, continuousLoad(argument(row, 0), argument(row, 1)))).toBeLessThanOrEqual(1);
});

test('is the 125 % rule turned round: 16 A continuous need 20 A', () => {
  expect(1 / CONTINUOUS_SHARE).toBe(1.25);
  expect(continuousLoad(20, 1)).toBe(16);
});

test('at 230 V, as a rule of this house, 16 A carry 2944 W', () => {
  expect(continuousLoad(16, 230)).toBeCloseTo(2944, 9);
});

test('a rating below nothing carries nothing', () => {
  expect(continuousLoad(-16, 230)).toBe(0);
});
