import fc from 'fast-check';
import { expect, test } from 'vitest';
import { density, densityIpts68 } from '#core/water/density';
import { argument, cases, miss } from './reference';

test.each(cases('density'))('EOS-80: %s', (_name, row) => {
  expect(miss(row, densityIpts68(argument(row, 0), argument(row, 1)))).toBeLessThanOrEqual(1);
});

test.each(cases('density-teos-10'))('an independent equation of state agrees: %s', (_name, row) => {
  expect(miss(row, density(argument(row, 0), argument(row, 1)))).toBeLessThanOrEqual(1);
});

test('today’s temperatures are brought to the old scale: it shows in the third decimal', () => {
  expect(density(25, 35)).toBe(densityIpts68(25.006, 35));
  expect(densityIpts68(25, 35) - density(25, 35)).toBeGreaterThan(1e-3);
});

test('salt always makes water heavier', () => {
  const temperature = fc.double({ min: -2, max: 40, noNaN: true });
  const salinity = fc.double({ min: 0, max: 41, noNaN: true });
  fc.assert(fc.property(temperature, salinity, (t, s) => density(t, s + 0.5) > density(t, s)));
});

test('outside the range temperature and salinity are held, so that density stays that of water', () => {
  expect(density(200, 35)).toBe(density(60, 35));
  expect(density(-9, 35)).toBe(density(-5.01, 35));
  expect(density(-4.9, 35)).not.toBe(density(-9, 35));
  expect(density(20, 500)).toBe(density(20, 100));
  expect(density(20, -5)).toBe(density(20, 0));
});
