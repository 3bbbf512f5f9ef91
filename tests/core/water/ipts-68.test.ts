import { expect, test } from 'vitest';
import { ipts68 } from '#core/water/ipts-68';

test('25 °C of today were 25.006 °C in 1968', () => {
  expect(ipts68(25)).toBeCloseTo(25.006, 12);
});

test('both scales share their zero, and differ by 0.01 °C at 40 °C', () => {
  expect(ipts68(0)).toBe(0);
  expect(ipts68(40) - 40).toBeCloseTo(0.0096, 12);
});
