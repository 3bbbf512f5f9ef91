import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { compensatedConductivity, rawConductivity } from '#core/water/compensated-conductivity';
import { conductivity, conductivityRatio, practicalSalinity, salinityFromRatio } from '#core/water/practical-salinity';
import { argument, cases, miss } from './reference';

test.each(cases('practical-salinity'))('PSS-78: %s', (_name, row) => {
  expect(miss(row, salinityFromRatio(argument(row, 0), argument(row, 1)))).toBeLessThanOrEqual(1);
});

test.each(cases('conductivity-ratio'))('PSS-78 backwards: %s', (_name, row) => {
  expect(miss(row, conductivityRatio(argument(row, 0), argument(row, 1)))).toBeLessThanOrEqual(1);
});

test.each(cases('conductivity'))('TEOS-10 gives the same: %s', (_name, row) => {
  expect(miss(row, conductivity(argument(row, 0), argument(row, 1)))).toBeLessThanOrEqual(1);
});

test.each(cases('compensated-conductivity'))('compensation: %s', (_name, row) => {
  const shown = compensatedConductivity(argument(row, 0), argument(row, 1), argument(row, 2), argument(row, 3));
  expect(miss(row, shown)).toBeLessThanOrEqual(1);
});

/** Salinity by the sum alone, with what is misprinted elsewhere. */
function misprinted(ratio: number, t: number, k: number, a2: number): number {
  const a = [0.008, -0.1692, a2, 14.0941, -7.0261, 2.7081];
  const b = [0.0005, -0.0056, -0.0066, -0.0375, 0.0636, -0.0144];
  const sum = (list: number[]) => list.reduce((all, one, i) => all + one * ratio ** (i / 2), 0);
  return sum(a) + ((t - 15) / (1 + k * (t - 15))) * sum(b);
}

describe('misprints', () => {
  test('k = 0.00162 misses the published salinity, 0.0162 hits it', () => {
    expect(misprinted(1.0568875, 20, 0.0162, 25.3851)).toBeCloseTo(37.245628, 5);
    expect(Math.abs(misprinted(1.0568875, 20, 0.00162, 25.3851) - 37.245628)).toBeGreaterThan(5e-4);
    expect(salinityFromRatio(1.0568875, 20)).toBeCloseTo(37.245628, 5);
  });

  test('25.3853 makes sea water of 35 one of 35.0002', () => {
    expect(misprinted(1, 15, 0.0162, 25.3853)).toBeCloseTo(35.0002, 6);
    expect(salinityFromRatio(1, 15)).toBeCloseTo(35, 9);
  });
});

test('a compensated 53 mS/cm fed in as raw at 20 °C passes for 39.2; made raw first it is 35', () => {
  expect(practicalSalinity(53, 20)).toBeCloseTo(39.2, 1);
  expect(practicalSalinity(rawConductivity(53, 20, 25, 0.0191), 20)).toBeCloseTo(35, 1);
});

test('salinity and conductivity are each other’s inverse within 1e-6, down to nearly fresh water', () => {
  const salinity = fc.double({ min: 0.01, max: 42, noNaN: true });
  const temperature = fc.double({ min: -2, max: 35, noNaN: true });
  fc.assert(
    fc.property(salinity, temperature, (s, t) => Math.abs(practicalSalinity(conductivity(s, t), t) - s) < 1e-6),
  );
});

test('compensating and undoing it are each other’s inverse', () => {
  const c = fc.double({ min: 0, max: 80, noNaN: true });
  const t = fc.double({ min: 0, max: 40, noNaN: true });
  fc.assert(
    fc.property(c, t, (raw, at) => {
      const back = rawConductivity(compensatedConductivity(raw, at, 25, 0.0191), at, 25, 0.0191);
      return Math.abs(back - raw) < 1e-9;
    }),
  );
});

test('more conductivity at one temperature is always more salt', () => {
  const c = fc.double({ min: 0.01, max: 74, noNaN: true });
  const t = fc.double({ min: -2, max: 35, noNaN: true });
  fc.assert(fc.property(c, t, (raw, at) => practicalSalinity(raw + 0.05, at) > practicalSalinity(raw, at)));
});

test('below 2 the extension of Hill and others keeps it right, and water without ions has none', () => {
  expect(practicalSalinity(1.969, 25)).toBeCloseTo(1, 3);
  expect(misprinted(1.968 / conductivity(35, 25), 25, 0.0162, 25.3851)).toBeCloseTo(1, 2);
  expect(practicalSalinity(0, 25)).toBe(0);
  expect(practicalSalinity(-5, 25)).toBe(0);
});
