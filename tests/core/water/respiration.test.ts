import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  MASS_EXPONENT,
  RESPIRATION_REFERENCE,
  respiration,
  respirationAtReference,
  respirationFactor,
  respirationFactorSlope,
} from '#core/water/respiration';
import { slopeOf } from './numerics';
import { argument, cases } from './reference';

/** mg/(kg·h), as papers print it. */
function printed(temperature: number, mass: number): number {
  return (respiration(temperature, mass) * 3.6e6) / mass;
}

describe('Clarke & Johnston 1999', () => {
  test('a fish at 30 °C needs about six times what one needs at 0 °C', () => {
    expect(Math.abs(respirationFactor(30) / respirationFactor(0) - 6)).toBeLessThan(0.5);
  });

  test('the mean Q10 between 0 and 30 °C is 1.83', () => {
    expect((respirationFactor(30) / respirationFactor(0)) ** (1 / 3)).toBeCloseTo(1.83, 2);
  });

  test('a 50 g fish uses e^(15.7 − 5.02·10³/T) mmol/h', () => {
    for (const t of [0, 10, 20, 30]) {
      const millimoles = Math.exp(15.7 - 5020 / (t + 273.15));
      expect(Math.abs(respiration(t, 0.05) / ((millimoles * 0.0319988) / 3600) - 1)).toBeLessThan(1e-12);
    }
  });

  test('mass counts to the power 0.80', () => {
    expect(MASS_EXPONENT).toBe(0.8);
    expect(respiration(20, 0.5) / respiration(20, 0.05)).toBeCloseTo(10 ** 0.8, 12);
  });

  test('their pooled line, which is not corrected for temperature, would give a third: it is not used', () => {
    const pooled = (Math.exp(0.8 * Math.log(50) - 5.43) * 31.9988) / 0.05;
    expect(pooled).toBeCloseTo(64, 0);
    expect(printed(25, 0.05) / pooled).toBeGreaterThan(3);
  });
});

test.each(cases('respiration'))('single species scatter, none is missed by more than it says: %s', (_name, row) => {
  const ratio = row.value / printed(argument(row, 0), argument(row, 1));
  expect(ratio).toBeLessThan(3);
  expect(ratio).toBeGreaterThan(1 / (row.within ?? 1));
});

test('the rate is its part at 20 °C times its factor, so that a sum over animals needs one exponential', () => {
  expect(RESPIRATION_REFERENCE).toBe(20);
  expect(respirationFactor(20)).toBe(1);
  expect(respiration(27, 0.3)).toBe(respirationAtReference(0.3) * respirationFactor(27));
});

test('the slope is that of the factor, by central differences, and 0 where temperature is held', () => {
  const temperature = fc.double({ min: -10, max: 50, noNaN: true });
  fc.assert(
    fc.property(temperature, (t) => {
      expect(respirationFactorSlope(t) / slopeOf(respirationFactor, t, 0.05)).toBeCloseTo(1, 9);
    }),
  );
  expect(respirationFactorSlope(99)).toBe(0);
  expect(respirationFactor(99)).toBe(respirationFactor(60));
});

test('warmer or larger fish always use more, and a small one more for each kilogram', () => {
  const temperature = fc.double({ min: 0, max: 29, noNaN: true });
  const mass = fc.double({ min: 1e-4, max: 50, noNaN: true });
  fc.assert(
    fc.property(temperature, mass, (t, m) => {
      const here = respiration(t, m);
      return respiration(t + 1, m) > here && respiration(t, 1.1 * m) > here && respiration(t, 1.1 * m) < 1.1 * here;
    }),
  );
});
