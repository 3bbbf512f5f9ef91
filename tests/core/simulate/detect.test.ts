import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { stillAir } from '#core/simulate/air';
import { type End, firstCrossing, firstRise } from '#core/simulate/detect';
import { linear } from '#core/simulate/signal';
import { type Watch, watch } from '#core/simulate/watch';
import { look, watchTable } from '#core/simulate/watch-table';

/** The cubic through both ends, and where a plain scan of it first finds it above 0. */
function scanned(g0: number, g1: number, s0: number, s1: number): number {
  for (let i = 1; i <= 20_000; i++) {
    const z = i / 20_000;
    const y = 1 - z;
    const value = (1 + 2 * z) * y * y * g0 + z * y * y * s0 + z * z * (3 - 2 * z) * g1 - z * z * y * s1;
    if (value > 0) return z;
  }
  return -1;
}

describe('the first rise of a cubic through 0', () => {
  test.each([
    ['a plain crossing', -1, 1, 2, 2],
    ['a graze: climbing at first, falling at the end', -1, -1, 10, -10],
    ['a graze from a standstill', -1, -0.01, 0, -1],
    ['a graze after a dip', -0.2, -0.02, -0.5, -3],
    ['over, under and coming again', -1, -0.9, 20, 20],
    ['over, under and over again: the first of three', -1, 0.5, 25, 25],
    ['a start that sits on the threshold and leaves it upwards', 0, 1, 1, 1],
    ['a start that sits on the threshold, dips and comes through', 0, 1, -2, 4],
  ])('is found in %s', (_, g0, g1, s0, s1) => {
    const z = scanned(g0, g1, s0, s1);
    expect(z).toBeGreaterThan(0);
    expect(Math.abs(firstRise(g0, g1, s0, s1) - z)).toBeLessThan(1e-4);
  });

  test.each([
    ['both ends far below', -5, -4, 1, 1],
    ['a hump that stays below', -1, -1, 3, -3],
    ['falling all the way', -0.1, -2, -1, -3],
    ['leaving the threshold downwards', 0, -1, -1, -1],
    ['a lost signal', Number.NaN, Number.NaN, Number.NaN, Number.NaN],
    ['a latched one', -1, Number.NEGATIVE_INFINITY, 0, 0],
  ])('is not seen in %s', (_, g0, g1, s0, s1) => {
    expect(firstRise(g0, g1, s0, s1)).toBe(-1);
  });

  test('is the one a plain scan finds, whatever the ends', () => {
    const number = fc.double({ min: -20, max: 20, noNaN: true });
    fc.assert(
      fc.property(number, number, number, number, (a, g1, s0, s1) => {
        const g0 = Math.min(0, a);
        const at = firstRise(g0, g1, s0, s1);
        const z = scanned(g0, g1, s0, s1);
        // A hump too narrow for the scan may be found by the one and not by the other.
        const narrow = at >= 0 && heightAt(g0, g1, s0, s1, at + 1e-4) < 1e-3;
        return narrow || (z < 0 ? at < 0 : Math.abs(at - z) < 1e-4);
      }),
      { numRuns: 400, seed: 20_260_601 },
    );
  });
});

function heightAt(g0: number, g1: number, s0: number, s1: number, z: number): number {
  const y = 1 - z;
  return (1 + 2 * z) * y * y * g0 + z * y * y * s0 + z * z * (3 - 2 * z) * g1 - z * z * y * s1;
}

const H = 100;

/** A step of 100 s of one number, from a value and slope to another. */
function stepOf(a: [value: number, slope: number], b: [value: number, slope: number], ...watches: Watch[]) {
  const end = ([value, slope]: [number, number]): End => ({
    x: Float64Array.of(value),
    f: Float64Array.of(slope),
    air: stillAir(),
  });
  const table = watchTable(watches);
  look(table, end(a).x, end(a).air);
  return firstCrossing(table, H, end(a), end(b));
}

const above = (at: number, off = at - 1) => watch('limit', 0, linear(0), 1, at, off);
const below = (at: number, off = at + 1) => watch('limit', 0, linear(0), -1, at, off);
const active = (w: Watch): Watch => ({ ...w, active: true });

describe('the first watch that changes within a step', () => {
  test('is found rising above and falling below', () => {
    expect(stepOf([20, 0.1], [30, 0.1], above(25))?.at).toBeCloseTo(0.5, 9);
    expect(stepOf([30, -0.1], [20, -0.1], below(25))?.at).toBeCloseTo(0.5, 9);
    expect(stepOf([20, 0.1], [30, 0.1], below(25))).toBeNull();
  });

  test('is found on its way back, at its own second threshold', () => {
    expect(stepOf([30, -0.1], [20, -0.1], active(above(25, 24)))?.at).toBeCloseTo(0.6, 9);
    expect(stepOf([20, 0.1], [30, 0.1], active(below(25, 26)))?.at).toBeCloseTo(0.6, 9);
    expect(stepOf([30, -0.1], [24.5, 0], active(above(25, 24)))).toBeNull();
  });

  test('is the earlier of two in one step, in whatever order they stand', () => {
    const [early, late] = [above(22), above(28)];
    expect(stepOf([20, 0.1], [30, 0.1], late, early)?.watch).toBe(early);
    expect(stepOf([20, 0.1], [30, 0.1], early, late)?.watch).toBe(early);
    expect(stepOf([20, 0.1], [30, 0.1], late, early)?.at).toBeCloseTo(0.2, 9);
  });

  test('is found when it is only grazed, over or under', () => {
    expect(stepOf([24, 0.08], [24, -0.08], above(25))?.at).toBeGreaterThan(0);
    expect(stepOf([26, -0.08], [26, 0.08], below(25))?.at).toBeGreaterThan(0);
    expect(stepOf([24, 0.03], [24, -0.03], above(25))).toBeNull();
  });

  test('leaves a latched one alone for ever', () => {
    const latched = active({ ...above(25), latched: true });
    expect(stepOf([30, -0.1], [20, -0.1], latched)).toBeNull();
  });
});
