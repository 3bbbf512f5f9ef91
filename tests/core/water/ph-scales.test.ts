import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { PH_SCALES } from '#core/facility/system';
import { freeAboveTotal, fromTotalScale, hydrogenActivity, nbsAboveTotal, toTotalScale } from '#core/water/ph-scales';
import { fluoridePk, sulphatePk } from '#core/water/seawater-acids';
import { argument, cases, miss } from './reference';

test.each(cases('nbs-above-total'))('a meter in the usual buffers reads high in sea water: %s', (_name, row) => {
  expect(miss(row, nbsAboveTotal(argument(row, 0), argument(row, 1)))).toBeLessThanOrEqual(1);
});

test.each(cases('sulphate-pk'))('sulphate: %s', (_name, row) => {
  expect(miss(row, sulphatePk(argument(row, 0), argument(row, 1)))).toBeLessThanOrEqual(1);
});

test.each(cases('fluoride-pk'))('fluoride: %s', (_name, row) => {
  expect(miss(row, fluoridePk(argument(row, 0), argument(row, 1)))).toBeLessThanOrEqual(1);
});

test('fH at 25 °C and 35 is 0.7134043, the check value of seacarb', () => {
  expect(hydrogenActivity(25, 35)).toBeCloseTo(0.7134043, 6);
});

test('the free scale stands 0.108 above the total one at 25 °C and 35, by PyCO2SYS, run', () => {
  expect(freeAboveTotal(25, 35)).toBeCloseTo(0.108, 3);
});

describe('in water with less salt', () => {
  test('all scales are one in fresh water', () => {
    expect(freeAboveTotal(25, 0)).toBe(0);
    expect(Math.abs(nbsAboveTotal(25, 0))).toBe(0);
    for (const scale of PH_SCALES) expect(toTotalScale(7.4, scale, 25, 0)).toBe(7.4);
  });

  test('without the step in proportion the formula would take 0.16 off a fresh-water reading', () => {
    expect(-Math.log10(hydrogenActivity(25, 0))).toBeCloseTo(0.1626, 3);
    expect(nbsAboveTotal(25, 1)).toBeLessThan(0.01);
  });

  test('the step never jumps', () => {
    const salinity = fc.double({ min: 0, max: 40, noNaN: true });
    fc.assert(fc.property(salinity, (s) => Math.abs(nbsAboveTotal(25, s + 0.01) - nbsAboveTotal(25, s)) < 1e-4));
  });
});

test('to the total scale and back is where it began', () => {
  const ph = fc.double({ min: 6, max: 10, noNaN: true });
  const t = fc.double({ min: 0, max: 40, noNaN: true });
  const s = fc.double({ min: 0, max: 40, noNaN: true });
  fc.assert(
    fc.property(ph, fc.constantFrom(...PH_SCALES), t, s, (at, scale, temperature, salinity) => {
      const total = toTotalScale(at, scale, temperature, salinity);
      expect(fromTotalScale(total, scale, temperature, salinity)).toBeCloseTo(at, 12);
      expect(total).toBeLessThanOrEqual(at);
    }),
  );
});

test('a broken salinity is not lost, not even where the scale needs none', () => {
  expect(toTotalScale(8, 'total', 25, Number.NaN)).toBeNaN();
  expect(toTotalScale(8, 'nbs', Number.NaN, 35)).toBeNaN();
});
