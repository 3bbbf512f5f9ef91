import { together } from '#core/calibration/combine';
import { covariance, inverted, spreadByMemory } from '#core/calibration/covariance';
import { studentT } from '#core/calibration/student';
import { describe, expect, test } from 'vitest';

/** Part of Student's density within ±t, by the trapezium rule on its own formula without its constant. */
function partWithin(t: number, freedom: number): number {
  const density = (x: number) => (1 + (x * x) / freedom) ** (-(freedom + 1) / 2);
  // x = tan(u) makes the tails finite.
  const area = (from: number, to: number) => {
    const steps = 20_000;
    const h = (to - from) / steps;
    let sum = 0;
    for (let i = 0; i <= steps; i++) {
      const u = from + i * h;
      const value = Math.abs(Math.cos(u)) < 1e-9 ? 0 : density(Math.tan(u)) / Math.cos(u) ** 2;
      sum += i === 0 || i === steps ? value / 2 : value;
    }
    return sum * h;
  };
  return area(-Math.atan(t), Math.atan(t)) / area(-Math.PI / 2, Math.PI / 2);
}

describe('an interval of 95 %', () => {
  test.each([2, 3, 5, 10, 17, 30, 60, 500])(
    'has as much of the distribution within it, with %i degrees of freedom',
    (freedom) => {
      expect(partWithin(studentT(freedom), freedom)).toBeCloseTo(0.95, 3);
    },
  );
});

describe('the covariance of a straight line', () => {
  // Anscombe 1973, The American Statistician 27, 17, first set: intercept 3.0 ± 1.125, slope 0.5 ± 0.118 (from memory).
  const x = [10, 8, 13, 9, 11, 14, 6, 4, 12, 7, 5];
  const y = [8.04, 6.95, 7.58, 8.81, 8.33, 9.96, 7.24, 4.26, 10.84, 4.82, 5.68];
  test('is that of a published set', () => {
    const residuals = y.map((value, i) => value - (3.00009 + 0.50009 * (x[i] ?? 0)));
    const found = covariance(
      x.map((one) => [1, one]),
      residuals,
      0,
    );
    const memory = spreadByMemory(residuals);
    expect(Math.sqrt(found?.[0]?.[0] ?? 0) / memory).toBeCloseTo(1.1247, 3);
    expect(Math.sqrt(found?.[1]?.[1] ?? 0) / memory).toBeCloseTo(0.1179, 3);
  });

  test('is not told where the readings do not tell the parameters apart', () => {
    expect(
      covariance(
        x.map((one) => [one, 2 * one]),
        y,
        0,
      ),
    ).toBeNull();
    expect(covariance([[1, 2]], [0.1], 0)).toBeNull();
  });

  test('comes from an inverse that is one', () => {
    const matrix = [
      [4, 1e-3, 2],
      [1e-3, 1e-6, 4e-4],
      [2, 4e-4, 3],
    ];
    const inverse = inverted(matrix) ?? [];
    for (const [i, row] of matrix.entries())
      for (let j = 0; j < 3; j++)
        expect(row.reduce((sum, value, k) => sum + value * (inverse[k]?.[j] ?? 0), 0)).toBeCloseTo(i === j ? 1 : 0, 8);
  });
});

describe('several stretches together', () => {
  const one = (value: number, error = 1) => ({ value, error, freedom: 50 });
  test('are their weighted mean where they agree', () => {
    const said = together([one(10), one(10, 2), one(10, 3)]);
    expect(said).toMatchObject({ value: 10, between: 0 });
  });

  test('widen the interval where they differ by more than the readings explain', () => {
    const close = together([one(9.9), one(10), one(10.1), one(10)]);
    const apart = together([one(5), one(10), one(15), one(10)]);
    expect(apart.between).toBeGreaterThan(3);
    expect(apart.half).toBeGreaterThan(2 * close.half);
  });

  test('are never better known than the readings say', () => {
    expect(together([one(10), one(10), one(10)]).half).toBeGreaterThanOrEqual(4.3 / Math.sqrt(3));
    expect(together([one(10)]).half).toBeCloseTo(2.008, 2);
  });
});
