import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { garciaGordon, weissOxygen } from '#core/water/other-oxygen';
import { oxygenSaturation } from '#core/water/oxygen-saturation';
import { OXYGEN_PER_MILLILITRE, oxygenMicromoles, oxygenPercent } from '#core/water/oxygen-units';
import { argument, cases, miss } from './reference';

test.each(cases('garcia-gordon'))('Garcia & Gordon: %s', (_name, row) => {
  expect(miss(row, garciaGordon(argument(row, 0), argument(row, 1)))).toBeLessThanOrEqual(1);
});

test.each(cases('weiss-oxygen'))('Weiss: %s', (_name, row) => {
  expect(miss(row, weissOxygen(argument(row, 0), argument(row, 1)))).toBeLessThanOrEqual(1);
});

const temperature = fc.double({ min: 0, max: 35, noNaN: true });
const salinity = fc.double({ min: 0, max: 40, noNaN: true });

describe('two fits to the same measurements', () => {
  test('agree within 0.05 % once the units are the same', () => {
    fc.assert(
      fc.property(temperature, salinity, (t, s) => {
        const ours = oxygenMicromoles(oxygenSaturation(t, s, 1), t, s);
        return Math.abs(ours / garciaGordon(t, s) - 1) < 5e-4;
      }),
    );
  });

  test('a further term in Ts², as some printings have it, misses the published value by a fifth', () => {
    // TEOS-10: 214.656 at 22.7862 °C and 35.0256.
    const x = Math.log((298.15 - 22.7862) / (273.15 + 22.7862));
    const wrong = garciaGordon(22.7862, 35.0256) * Math.exp(5.10006 * x * x);
    expect(Math.abs(wrong / 214.656 - 1)).toBeGreaterThan(0.01);
    expect(garciaGordon(22.7862, 35.0256)).toBeCloseTo(214.656, 3);
  });
});

test('Weiss lies 0.1 to 0.3 % below at 20 to 30 °C: the two are not to be mixed in one percentage', () => {
  for (const t of [20, 25, 30]) {
    for (const s of [0, 35]) {
      const below = 1 - (OXYGEN_PER_MILLILITRE * weissOxygen(t, s)) / oxygenSaturation(t, s, 1);
      expect(below).toBeGreaterThan(0.001);
      expect(below).toBeLessThan(0.003);
    }
  }
});

test('the linear correction for salt of EN 25814 lies within 1.1 % of it at 35', () => {
  // manualslib.es/manual/67236, p. 52: subtract K·(g/kg).
  const table: [number, number, number][] = [
    [0, 14.62, 0.0875],
    [10, 11.29, 0.0632],
    [20, 9.09, 0.0475],
    [25, 8.26, 0.0421],
    [30, 7.56, 0.0371],
  ];
  for (const [t, fresh, k] of table) {
    const linear = fresh - 35 * k;
    expect(Math.abs(linear / oxygenSaturation(t, 35, 1) - 1)).toBeLessThan(0.011);
    expect(Math.abs(linear - oxygenSaturation(t, 35, 1))).toBeGreaterThan(0.005);
  }
});

test('6 mg/L at 25 °C are 89 % in sea water; by the table for fresh water they pass for 73 %', () => {
  expect(oxygenPercent(6, 25, 35, 1)).toBeCloseTo(88.6, 1);
  expect(oxygenPercent(6, 25, 0, 1)).toBeCloseTo(72.6, 1);
  expect(oxygenPercent(6, 25, 35, 0.8)).toBeGreaterThan(110);
});

test('1.42905 mg are a mL, 0.1 % more than older code has', () => {
  expect(31.9988 / 22.3916).toBeCloseTo(OXYGEN_PER_MILLILITRE, 4);
  expect(OXYGEN_PER_MILLILITRE / 1.4276 - 1).toBeCloseTo(0.001, 3);
});
