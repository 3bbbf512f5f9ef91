import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { steadyExchange, waterChanges } from '#core/water/water-changes';
import { integrate } from './numerics';

describe('changes one after another', () => {
  test('three of a fifth leave 51.2 %, not the 40 % that adding them up would say', () => {
    expect(waterChanges(100, 0, 0.2, 3)).toBeCloseTo(51.2, 9);
    expect(waterChanges(100, 0, 0.2, 3)).toBeGreaterThan(100 * (1 - 3 * 0.2) + 10);
  });

  test('are what changing one by one comes to, whatever the new water holds', () => {
    const amount = fc.double({ min: 0, max: 100, noNaN: true });
    const fraction = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(amount, amount, fraction, fc.integer({ min: 0, max: 12 }), (start, fresh, f, n) => {
        let step = start;
        for (let i = 0; i < n; i++) step += f * (fresh - step);
        expect(waterChanges(start, fresh, f, n)).toBeCloseTo(step, 9);
      }),
    );
  });
});

describe('a steady exchange', () => {
  test('of one volume takes out 63.2 %, of 2.303 volumes 90 %', () => {
    expect(steadyExchange(100, 0, 0, 1, 1, 1)).toBeCloseTo(100 * Math.exp(-1), 9);
    expect(steadyExchange(100, 0, 0, 1, 1, Math.log(10))).toBeCloseTo(10, 9);
  });

  test('is what the reference library integrates, with a source', () => {
    for (const [start, fresh, source, flow, volume, hours] of [
      [40, 2, 5, 0.2, 1.5, 12],
      [0, 0, 1, 0.01, 0.3, 48],
      [10, 5, 0, 1, 4, 3],
    ] as const) {
      const rate = (c: number) => (source + flow * (fresh - c)) / volume;
      expect(steadyExchange(start, fresh, source, flow, volume, hours)).toBeCloseTo(integrate(rate, start, hours), 8);
    }
  });

  test('without time changes nothing', () => {
    expect(steadyExchange(7, 1, 1, 1, 1, -3)).toBeCloseTo(7, 12);
  });
});
