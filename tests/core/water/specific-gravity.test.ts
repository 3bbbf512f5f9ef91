import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  GRAVITY_CONVENTIONS,
  hydrometerSalinity,
  salinityFromGravity,
  specificGravity,
} from '#core/water/specific-gravity';
import { argument, cases, miss } from './reference';

test.each(cases('specific-gravity'))('specific gravity: %s', (_name, row) => {
  expect(miss(row, specificGravity(argument(row, 0), argument(row, 1), argument(row, 2)))).toBeLessThanOrEqual(1);
});

test.each(cases('hydrometer-salinity'))('hydrometer: %s', (_name, row) => {
  expect(miss(row, hydrometerSalinity(argument(row, 0), argument(row, 1), argument(row, 2)))).toBeLessThanOrEqual(1);
});

describe('traps', () => {
  test('one reading is four salinities, by the convention: 1.0264 is 35 at 25/25 but 39 at 25/4', () => {
    const [[water, fresh], [cold, four]] = [GRAVITY_CONVENTIONS['25/25 °C'], GRAVITY_CONVENTIONS['25/4 °C']];
    expect(salinityFromGravity(1.0264, water, fresh)).toBeCloseTo(35, 1);
    expect(salinityFromGravity(1.0264, cold, four)).toBeGreaterThan(38.9);
  });

  test('the published hydrometer table lies 0.25 to 0.4 of salinity below density itself, at every row', () => {
    for (const [, row] of cases('hydrometer-salinity')) {
      const above = hydrometerSalinity(argument(row, 0), argument(row, 1), argument(row, 2)) - row.value;
      expect(above).toBeGreaterThan(0.2);
      expect(above).toBeLessThan(0.45);
    }
  });

  test('a hydrometer for 60 °F is put right within 0.0005 of the published corrections', () => {
    // mail.stason.org/TULARC/animals/aquaria/reefkeeper/1-3-6: °F and what is added to a reading of 1.0235.
    const corrections: [number, number][] = [
      [50, -0.0005],
      [60, 0],
      [70, 0.001],
      [80, 0.0024],
      [90, 0.004],
    ];
    const made = 140 / 9;
    for (const [fahrenheit, added] of corrections) {
      const salinity = hydrometerSalinity(1.0235, (fahrenheit - 32) / 1.8, made);
      expect(Math.abs(specificGravity(salinity, made, made) - 1.0235 - added)).toBeLessThan(5.2e-4);
    }
  });
});

test('gravity and salinity are each other’s inverse', () => {
  const salinity = fc.double({ min: 0, max: 42, noNaN: true });
  const temperature = fc.double({ min: 0, max: 40, noNaN: true });
  const reference = fc.constantFrom(4, 140 / 9, 20, 25);
  fc.assert(
    fc.property(salinity, temperature, reference, (s, t, r) => {
      return Math.abs(salinityFromGravity(specificGravity(s, t, r), t, r) - s) < 1e-6;
    }),
  );
});

test('what is lighter than fresh water has no salt, and a broken reading none either way', () => {
  expect(salinityFromGravity(0.9, 25, 25)).toBeCloseTo(0, 9);
  expect(salinityFromGravity(Number.NaN, 25, 25)).toBeNaN();
});
