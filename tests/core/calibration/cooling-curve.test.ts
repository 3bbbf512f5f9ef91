import { coolingCurve, type Lump } from '#core/calibration/cooling-curve';
import { lumpTemperature } from '#core/water/cooling';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

const HOUR_MS = 3_600_000;

/** The tank of the worked example of the note on heat: 432 L of seawater, walls alone, no evaporation. */
function lump(given: Partial<Lump> = {}): Lump {
  return {
    heatCapacity: 1.7694e6,
    evaporation: 0,
    vapourFactor: 1,
    powerAt: () => 0,
    roomAt: () => ({ temperature: 22, vapour: 1300 }),
    ...given,
  };
}

describe('the curve of a lump that cools', () => {
  test('meets the closed form T∞ + (T0 − T∞)·e^(−t/τ) for any power, room and loss', () => {
    const one = fc.record({
      power: fc.double({ min: 0, max: 500, noNaN: true }),
      room: fc.double({ min: 5, max: 30, noNaN: true }),
      loss: fc.double({ min: 1, max: 100, noNaN: true }),
      hours: fc.double({ min: 0.1, max: 14, noNaN: true }),
    });
    fc.assert(
      fc.property(one, ({ power, room, loss, hours }) => {
        const still = lump({ powerAt: () => power, roomAt: () => ({ temperature: room, vapour: 0 }) });
        const times = [0, (hours / 3) * HOUR_MS, hours * HOUR_MS];
        const found = coolingCurve(still, times)(loss, 26);
        const wanted = times.map((at) => lumpTemperature(26, room, power, still.heatCapacity, loss, at / 1000));
        expect(found[0]).toBe(26);
        for (const [i, value] of found.entries()) expect(Math.abs(value - (wanted[i] ?? 0))).toBeLessThan(1e-6);
      }),
      { numRuns: 50 },
    );
  });

  test('has the time constant of C/UA: 23.6 h on 20.82 W/K (worked out beside the law, a regression)', () => {
    const [, later = 0] = coolingCurve(lump(), [0, 23.6 * HOUR_MS])(20.82, 26);
    expect((later - 22) / 4).toBeCloseTo(Math.exp(-1), 3);
  });

  test('cools faster with evaporation, and comes to rest below the room', () => {
    const wet = lump({ evaporation: 0.05 });
    const [, dry = 0, dryLate = 0] = coolingCurve(lump(), [0, 5 * HOUR_MS, 400 * HOUR_MS])(20, 26);
    const [, damp = 0, dampLate = 0] = coolingCurve(wet, [0, 5 * HOUR_MS, 400 * HOUR_MS])(20, 26);
    expect(damp).toBeLessThan(dry);
    expect(dryLate).toBeCloseTo(22, 3);
    expect(dampLate).toBeLessThan(22);
  });
});
