import fc from 'fast-check';
import { expect, test } from 'vitest';
import { stillSurfaceTransfer } from '#core/water/still-surface-transfer';
import { argument, cases, miss } from './reference';

const DAY = 86_400;

/** Schmidt number the law must have used: k = k600·(Sc/600)^−0.5 turned round. */
function schmidt(t: number): number {
  return 600 * (0.0207 / 3600 / stillSurfaceTransfer(t)) ** 2;
}

test.each(cases('still-surface-transfer'))('Schmidt number by another polynomial: %s', (_name, row) => {
  expect(miss(row, schmidt(argument(row, 0)))).toBeLessThanOrEqual(1);
});

test('is 2.07 cm/h, 0.497 m a day, times (Sc/600)^−0.5 with the published Schmidt number', () => {
  const published = (t: number) => 1568 - 86.04 * t + 2.142 * t * t - 0.0216 * t ** 3;
  for (const t of [4, 10, 20, 25, 30, 35]) {
    const k = 0.0207 * 24 * (published(t) / 600) ** -0.5;
    expect(Math.abs((stillSurfaceTransfer(t) * DAY) / k - 1)).toBeLessThan(1e-12);
  }
});

test('at 25 °C lies above the least reaeration of 0.6 m a day within 1 %', () => {
  // ponce.sdsu.edu/onlineoxygenation.php, after Chin 2006: 0.6/depth per day.
  expect((stillSurfaceTransfer(25) * DAY) / 0.6).toBeGreaterThan(0.99);
});

test('a tank with dead flow gets almost nothing: 0.72 m² on 432 L, 0.041 an hour', () => {
  expect((stillSurfaceTransfer(25) * 3600 * 0.72) / 0.432).toBeCloseTo(0.041, 3);
});

test('rises with temperature and is held beyond 0 and 40 °C, where the polynomial would turn', () => {
  const temperature = fc.double({ min: 0, max: 39, noNaN: true });
  fc.assert(fc.property(temperature, (t) => stillSurfaceTransfer(t + 0.1) > stillSurfaceTransfer(t)));
  expect(stillSurfaceTransfer(90)).toBe(stillSurfaceTransfer(40));
  expect(stillSurfaceTransfer(-90)).toBe(stillSurfaceTransfer(0));
});
