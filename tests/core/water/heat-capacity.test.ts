import fc from 'fast-check';
import { expect, test } from 'vitest';
import { heatCapacity, heatCapacityIpts68 } from '#core/water/heat-capacity';
import { argument, cases, miss } from './reference';

test.each(cases('heat-capacity'))('UNESCO 1983: %s', (_name, row) => {
  expect(miss(row, heatCapacityIpts68(argument(row, 0), argument(row, 1)))).toBeLessThanOrEqual(1);
});

test('an independent equation of state agrees within 0.05 %', () => {
  // TEOS-10, GSW 3.6.16, run: 3998.977 and 4181.324 J/(kg·K).
  expect(Math.abs(heatCapacity(25, 35) / 3998.977 - 1)).toBeLessThan(5e-4);
  expect(Math.abs(heatCapacity(25, 0) / 4181.324 - 1)).toBeLessThan(5e-4);
});

test('today’s temperatures are brought to the old scale', () => {
  expect(heatCapacity(25, 35)).toBe(heatCapacityIpts68(25.006, 35));
});

test('salt always lowers the heat a kilogram takes', () => {
  const temperature = fc.double({ min: 0, max: 35, noNaN: true });
  const salinity = fc.double({ min: 0, max: 39.5, noNaN: true });
  fc.assert(fc.property(temperature, salinity, (t, s) => heatCapacity(t, s + 0.5) < heatCapacity(t, s)));
});
