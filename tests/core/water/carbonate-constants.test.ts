import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { boricPk, seaPkw } from '#core/water/boric-acid';
import {
  carbonDioxideSaturation,
  carbonDioxideSolubility,
  fugacityFactor,
} from '#core/water/carbon-dioxide-saturation';
import { brackishPk1, brackishPk2 } from '#core/water/carbonic-acid-brackish';
import { davies, freshPk1, freshPk2, freshPkw } from '#core/water/carbonic-acid-fresh';
import { seaPk1, seaPk2 } from '#core/water/carbonic-acid-sea';
import { fluoridePk } from '#core/water/seawater-acids';
import { argument, cases, miss } from './reference';

type Constant = (temperature: number, salinity: number) => number;
const ln = (pk: Constant) => (t: number, s: number) => -Math.LN10 * pk(t, s);

const constants: [string, Constant][] = [
  ['sea-pk1', seaPk1],
  ['sea-pk2', seaPk2],
  ['boric-pk', ln(boricPk)],
  ['sea-pkw', ln(seaPkw)],
  ['carbon-dioxide-solubility', (t, s) => Math.log(carbonDioxideSolubility(t, s))],
];

describe.each(constants)('%s in sea water', (name, compute) => {
  test.each(cases(name))('%s', (_name, row) => {
    expect(miss(row, compute(argument(row, 0), argument(row, 1)))).toBeLessThanOrEqual(1);
  });
});

test.each(cases('fresh-pk1'))('carbonic acid in fresh water, first step: %s', (_name, row) => {
  expect(miss(row, freshPk1(argument(row, 0)))).toBeLessThanOrEqual(1);
});

test.each(cases('fresh-pk2'))('carbonic acid in fresh water, second step: %s', (_name, row) => {
  expect(miss(row, freshPk2(argument(row, 0)))).toBeLessThanOrEqual(1);
});

describe('misprints', () => {
  test('−107.881 for −107.8871 misses the published pK2 of 10.3288', () => {
    const misprinted = freshPk2(25) - 107.8871 + 107.881;
    expect(Math.abs(misprinted - 10.3288)).toBeGreaterThan(5e-3);
    expect(Math.abs(freshPk2(25) - 10.3288)).toBeLessThan(1e-4);
  });

  test('the natural for the decimal logarithm is not water', () => {
    const T = 298.15;
    const natural = 356.3094 + 0.06091964 * T - 21834.37 / T - 126.8339 * Math.log(T) + 1684915 / (T * T);
    expect(natural).toBeLessThan(-300);
    expect(freshPk1(25)).toBeCloseTo(6.352, 3);
  });

  test('the handbook’s ln Kw of −30.434 is a rounded step between scales, its ln Kf of −6.09 another fit', () => {
    expect(-Math.LN10 * seaPkw(25, 35)).toBeCloseTo(-30.441, 3);
    // Perez & Fraga 1987, from memory: ln Kf = 874/T − 9.68 + 0.111·√S.
    expect(874 / 298.15 - 9.68 + 0.111 * Math.sqrt(35)).toBeCloseTo(-6.09, 2);
    expect(-Math.LN10 * fluoridePk(25, 35)).toBeCloseTo(-6.047, 3);
  });
});

test('pKw of pure water at 25 °C is 14.000, as the PHREEQC data base has it', () => {
  expect(freshPkw(25)).toBeCloseTo(14, 3);
});

test('sea water’s first step is 3.2 times as strong as fresh water’s', () => {
  expect(10 ** (freshPk1(25) - seaPk1(25, 35))).toBeCloseTo(3.2, 1);
});

describe('Millero 2010', () => {
  test('without salt is what Plummer & Busenberg found for fresh water, within 0.01 from 0 to 40 °C', () => {
    for (const t of [0, 10, 20, 25, 30, 40]) {
      expect(Math.abs(brackishPk1(t, 0) - freshPk1(t))).toBeLessThan(0.01);
      expect(Math.abs(brackishPk2(t, 0) - freshPk2(t))).toBeLessThan(0.01);
    }
  });

  test('in the sea is within 0.021 of Lueker 2000, wherever both hold', () => {
    const temperature = fc.double({ min: 5, max: 32, noNaN: true });
    const salinity = fc.double({ min: 19, max: 40, noNaN: true });
    fc.assert(
      fc.property(temperature, salinity, (t, s) => {
        expect(Math.abs(brackishPk1(t, s) - seaPk1(t, s))).toBeLessThan(0.021);
        expect(Math.abs(brackishPk2(t, s) - seaPk2(t, s))).toBeLessThan(0.021);
      }),
    );
  });
});

describe('ions in dilute water', () => {
  test('none lose nothing, and more lose more', () => {
    expect(davies(25, 0)).toBe(1);
    expect(davies(25, 0.01)).toBeLessThan(davies(25, 0.005));
  });

  test('at 0.01 and 0.1 mol/L come to 0.90 and 0.78, as Davies’ equation is tabulated (from memory)', () => {
    expect(davies(25, 0.01)).toBeCloseTo(0.9, 2);
    expect(davies(25, 0.1)).toBeCloseTo(0.78, 2);
  });
});

describe('carbon dioxide from the air', () => {
  test('Weiss without salt is Plummer & Busenberg’s constant of Henry, within 1 %', () => {
    // log10 KH = 108.3865 + 0.01985076·T − 6919.53/T − 40.45154·log10 T + 669365/T², as in public codes.
    for (const t of [0, 10, 20, 25, 30]) {
      const T = t + 273.15;
      const log = 108.3865 + 0.01985076 * T - 6919.53 / T - 40.45154 * Math.log10(T) + 669365 / (T * T);
      expect(Math.abs(carbonDioxideSolubility(t, 0) / 10 ** log - 1)).toBeLessThan(0.01);
    }
  });

  test('is in proportion to its part of the air, and less at height, in warm and in salt water', () => {
    const outdoors = carbonDioxideSaturation(25, 35, 420, 1);
    expect(carbonDioxideSaturation(25, 35, 1260, 1) / outdoors).toBeCloseTo(3, 12);
    expect(carbonDioxideSaturation(25, 35, 420, 0.8)).toBeLessThan(outdoors);
    expect(carbonDioxideSaturation(26, 35, 420, 1)).toBeLessThan(outdoors);
    expect(carbonDioxideSaturation(25, 36, 420, 1)).toBeLessThan(outdoors);
    expect(carbonDioxideSaturation(25, 35, -1, 1)).toBe(0);
  });

  test('the fugacity factor is 0.997 at 25 °C, as PyCO2SYS has it for the system of 396.958 µatm', () => {
    // 11.2344 µmol/kg of carbon dioxide = K0 · factor · 396.958 µatm.
    expect(fugacityFactor(25)).toBeCloseTo(11.2344 / (396.958 * carbonDioxideSolubility(25, 35)), 5);
  });
});
