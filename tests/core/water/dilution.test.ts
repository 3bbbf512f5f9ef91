import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { concentrationByEvaporation, concentrationByEvaporationLaw } from '#core/water/concentration-by-evaporation';
import { dilutionOverflowing } from '#core/water/dilution-overflowing';
import { dilutionRising } from '#core/water/dilution-rising';
import { integrate } from './numerics';

const salinity = fc.double({ min: 0, max: 45, noNaN: true });
const volume = fc.double({ min: 0.01, max: 1000, noNaN: true });
const share = fc.double({ min: 0, max: 3, noNaN: true });

describe('fresh water into a full system that overflows', () => {
  test('40 L into 500 L of 35: e^(−40/500) of the salt stays, 32.31', () => {
    expect(dilutionOverflowing(35, 0, 0.5, 0.04)).toBeCloseTo(35 * Math.exp(-0.08), 12);
    expect(dilutionOverflowing(35, 0, 0.5, 0.04)).toBeCloseTo(32.31, 2);
  });

  test('one volume exchanges 63.2 %, and 90 % needs 2.303 volumes', () => {
    expect(dilutionOverflowing(0, 1, 1, 1)).toBeCloseTo(0.632, 3);
    expect(dilutionOverflowing(0, 1, 1, Math.log(10))).toBeCloseTo(0.9, 12);
  });

  test('is what the reference ODE library makes of dS/dq = (S_in − S)/V, to 1e-9', () => {
    fc.assert(
      fc.property(salinity, salinity, volume, share, (s, incoming, v, part) => {
        const there = integrate((x) => incoming - x, s, part);
        expect(Math.abs(dilutionOverflowing(s, incoming, v, part * v) - there)).toBeLessThan(1e-9);
      }),
      { numRuns: 40 },
    );
  });

  test('in two helpings ends where one does', () => {
    fc.assert(
      fc.property(salinity, volume, share, share, (s, v, a, b) => {
        const two = dilutionOverflowing(dilutionOverflowing(s, 0, v, a * v), 0, v, b * v);
        return Math.abs(two - dilutionOverflowing(s, 0, v, (a + b) * v)) < 1e-9;
      }),
    );
  });
});

describe('fresh water into a system that rises', () => {
  test('40 L into 500 L of 35: 35·500/540, 32.41', () => {
    expect(dilutionRising(35, 0, 0.5, 0.04)).toBeCloseTo((35 * 500) / 540, 12);
    expect(dilutionRising(35, 0, 0.5, 0.04)).toBeCloseTo(32.41, 2);
  });

  test('keeps the salt: what was in the tank and what ran in are there afterwards', () => {
    fc.assert(
      fc.property(salinity, salinity, volume, share, (s, incoming, v, part) => {
        const q = part * v;
        const after = dilutionRising(s, incoming, v, q) * (v + q);
        return Math.abs(after - (s * v + incoming * q)) <= 1e-9 * (1 + s * v + incoming * q);
      }),
    );
  });

  test('dilutes less than overflowing does, because nothing salt has left', () => {
    fc.assert(
      fc.property(salinity, volume, share, (s, v, part) => {
        return dilutionRising(s, 0, v, part * v) >= dilutionOverflowing(s, 0, v, part * v) - 1e-12;
      }),
    );
  });
});

describe('evaporation without top-off', () => {
  test('20 L out of 500 L of 35: 35·500/480, 36.46', () => {
    expect(concentrationByEvaporation(35, 0.5, 0.02)).toBeCloseTo((35 * 500) / 480, 12);
    expect(concentrationByEvaporation(35, 0.5, 0.02)).toBeCloseTo(36.46, 2);
  });

  test('is undone by as much fresh water', () => {
    fc.assert(
      fc.property(salinity, volume, fc.double({ min: 0, max: 0.9, noNaN: true }), (s, v, part) => {
        const strong = concentrationByEvaporation(s, v, part * v);
        return Math.abs(dilutionRising(strong, 0, v - part * v, part * v) - s) < 1e-9 * (1 + s);
      }),
    );
  });

  test('of everything is refused at the edge, and stays a number inside', () => {
    expect(() => concentrationByEvaporationLaw.checked(35, 0.5, 0.5)).toThrow('not less than the volume');
    expect(concentrationByEvaporation(35, 0.5, 0.6)).toBeCloseTo(35e6, 3);
    expect(concentrationByEvaporation(0, 0.5, 0.6)).toBe(0);
  });
});
