import fc from 'fast-check';
import psychrolib from 'psychrolib';
import { expect, test } from 'vitest';
import { oxygenSaturation } from '#core/water/oxygen-saturation';
import { atmospheresFromAltitude, pressureFromAltitude } from '#core/water/pressure-from-altitude';
import { argument, cases, miss } from './reference';

psychrolib.SetUnitSystem(psychrolib.SI);

test.each(cases('pressure-from-altitude'))('standard atmosphere: %s', (_name, row) => {
  expect(miss(row, pressureFromAltitude(argument(row, 0)))).toBeLessThanOrEqual(1);
});

test('psychrolib gives the same to 1e-9', () => {
  const altitude = fc.double({ min: -500, max: 10_000, noNaN: true });
  fc.assert(
    fc.property(altitude, (z) => {
      return Math.abs(pressureFromAltitude(z) / psychrolib.GetStandardAtmPressure(z) - 1) < 1e-9;
    }),
  );
});

test('always falls with height, and the isothermal form of the lake packages is within 0.2 % at 1000 m', () => {
  const altitude = fc.double({ min: -1000, max: 10_900, noNaN: true });
  fc.assert(fc.property(altitude, (z) => pressureFromAltitude(z + 1) < pressureFromAltitude(z)));
  // github.com/GLEON/LakeMetabolizer.
  const isothermal = 101_325 * Math.exp((-9.80665 * 0.0289644 * 1000) / (8.31447 * 288.15));
  expect(Math.abs(pressureFromAltitude(1000) / isothermal - 1)).toBeLessThan(2e-3);
});

test('at 1000 m fresh water of 20 °C holds 8.04 mg/L, and sea water of 25 °C 5.98', () => {
  expect(oxygenSaturation(20, 0, atmospheresFromAltitude(1000))).toBeCloseTo(8.04, 2);
  expect(oxygenSaturation(25, 35, atmospheresFromAltitude(1000))).toBeCloseTo(5.98, 2);
});
