import { expect, test } from 'vitest';
import { LATENT_HEAT_SLOPE, latentHeat } from '#core/water/latent-heat';
import { argument, cases, miss } from './reference';

test.each(cases('latent-heat'))('%s', (_name, row) => {
  expect(miss(row, latentHeat(argument(row, 0)))).toBeLessThanOrEqual(1);
});

test('the other published line, 2500.8 − 2.372 t, is the same within 0.02 %', () => {
  // gisma.github.io/migration-fieldclim.
  for (const t of [0, 10, 20, 30, 40]) expect(Math.abs(latentHeat(t) / (2.5008e6 - 2372 * t) - 1)).toBeLessThan(2e-4);
});

test('is not the 2257 kJ/kg of boiling water, which are 8 % too little in a tank', () => {
  expect(latentHeat(25) / 2.257e6).toBeGreaterThan(1.08);
});

test('has the slope it says it has', () => {
  expect(latentHeat(26) - latentHeat(25)).toBe(LATENT_HEAT_SLOPE);
});
