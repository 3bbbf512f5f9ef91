import { mitigated, pfdAvg, pfdOfTests, pfdSharing, pfdSimplified, type Vote } from '#core/review/combined/pfd';
import { describe, expect, test } from 'vitest';

const VOTES: readonly Vote[] = ['1oo1', '1oo2', '2oo2', '2oo3'];

/** The mean over an interval by Simpson's rule: the definition itself, independent of the closed forms. */
function meanOf(vote: Vote, x: number): number {
  const failed = (t: number) => {
    const q = -Math.expm1(-t);
    return { '1oo1': q, '1oo2': q * q, '2oo2': 1 - (1 - q) ** 2, '2oo3': 3 * q * q - 2 * q ** 3 }[vote];
  };
  const n = 2000;
  const at = (i: number) => failed((x * i) / n) * (i === 0 || i === n ? 1 : i % 2 === 1 ? 4 : 2);
  return Array.from({ length: n + 1 }, (_, i) => at(i)).reduce((sum, one) => sum + one, 0) / (3 * n);
}

describe('the average probability of failure on demand', () => {
  // Computed with an independent program from the exact forms.
  test.each<[Vote, number, number]>([
    ['1oo1', 0.02, 0.0099337],
    ['1oo1', 0.05, 0.0245885],
    ['1oo1', 0.1, 0.0483742],
    ['1oo2', 0.02, 0.00013135],
    ['1oo2', 0.05, 0.0008028],
    ['1oo2', 0.1, 0.0030946],
    ['2oo2', 0.02, 0.019736],
    ['2oo2', 0.05, 0.0483742],
    ['2oo2', 0.1, 0.0936538],
    ['2oo3', 0.02, 0.00039015],
    ['2oo3', 0.05, 0.0023495],
    ['2oo3', 0.1, 0.0088398],
  ])('of %s at %d is %d', (vote, x, pfd) => {
    expect(pfdAvg(vote, x) / pfd).toBeCloseTo(1, 4);
  });

  test.each(VOTES)('of %s is the mean over the interval, down to the smallest', (vote) => {
    for (const x of [1e-6, 1e-5, 1e-4, 9.99e-4, 1.001e-3, 0.01, 0.3, 2, 10]) {
      expect(pfdAvg(vote, x) / meanOf(vote, x), `x = ${x}`).toBeCloseTo(1, 6);
    }
  });

  test.each(VOTES)('of %s is never more than the simplified form, and much the same where little fails', (vote) => {
    for (const x of [1e-4, 1e-2, 0.1]) expect(pfdAvg(vote, x)).toBeLessThanOrEqual(pfdSimplified(vote, x));
    expect(pfdSimplified(vote, 1e-3) / pfdAvg(vote, 1e-3)).toBeCloseTo(1, 2);
  });

  test('halves with half the interval between tests, where little fails', () => {
    expect(pfdOfTests(0.01, 180) / pfdOfTests(0.01, 90)).toBeCloseTo(2, 2);
    expect(pfdOfTests(0, 180)).toBe(0);
  });
});

describe('a worked example of a protective function over a year (lessons on industrial instrumentation)', () => {
  const HOURS = 8760;
  const logic = 1e-5;
  const transmitters = pfdSharing('2oo3', 1e-7 * HOURS, 0.05);

  test('transmitters two out of three, sharing a twentieth of their failures: 2.27e-5', () => {
    expect(pfdSimplified('2oo3', 1e-7 * HOURS)).toBeCloseTo(7.67e-7, 9);
    expect(transmitters).toBeCloseTo(2.27e-5, 7);
  });

  test('with one valve the valve decides: 8.79e-3, a risk reduction of 114', () => {
    const sum = transmitters + logic + pfdSimplified('1oo1', 2e-6 * HOURS);
    expect(sum).toBeCloseTo(8.79e-3, 5);
    expect(Math.round(1 / sum)).toBe(114);
  });

  test('with two valves what they share decides: 1.01e-3, a risk reduction of 989', () => {
    const valves = pfdSharing('1oo2', 2e-6 * HOURS, 0.1);
    expect(pfdSimplified('1oo2', 2e-6 * HOURS)).toBeCloseTo(1.02e-4, 6);
    expect(valves).toBeCloseTo(9.78e-4, 6);
    expect(1 / (transmitters + logic + valves)).toBeCloseTo(989, 0);
  });
});

test('a worked example of layers: 0.1 a year, alarm and operator 0.1, somebody there half the time: 5e-3 a year', () => {
  const left = mitigated(0.1, [0.1, 0.5]);
  expect(left).toBeCloseTo(5e-3, 12);
  // 1e-5 a year is borne: one more layer would have to fail less than twice in a thousand.
  expect(1e-5 / left).toBeCloseTo(2e-3, 12);
});
