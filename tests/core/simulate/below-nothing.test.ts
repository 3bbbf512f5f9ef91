import { expect, test } from 'vitest';
import { byOxygen, byOxygenSlope } from '#core/simulate/nitrify';
import { uptake } from '#core/simulate/rates';

// A long step may leave a tank that has all but run dry a little below no oxygen. Nothing may then fall any further by itself.
test.each([-1e-9, -0.1, -40])('below no oxygen (%d g/m³) nothing breathes and nothing is turned over', (oxygen) => {
  expect(uptake(oxygen)).toBe(0);
  expect(byOxygen(oxygen)).toBe(0);
  expect(byOxygenSlope(oxygen)).toBe(0);
});

test('above it both begin from nothing, without a jump', () => {
  expect(uptake(1e-6)).toBeLessThan(1e-9);
  expect(byOxygen(1e-6)).toBeLessThan(1e-5);
  expect(uptake(6)).toBeGreaterThan(0.999);
});
