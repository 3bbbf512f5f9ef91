import { describe, expect, test } from 'vitest';
import { density } from '#core/water/density';
import { gfciTime, rcdTime } from '#core/water/earth-fault';
import { fieldTransfer } from '#core/water/field-transfer';
import { depthCompensation, gasPercent } from '#core/water/gas-pressure';
import { chloramineNitrogen, ozoneAsChlorine, thiosulphateFor } from '#core/water/oxidants';
import { oxygenSaturation } from '#core/water/oxygen-saturation';
import { uvDose } from '#core/water/uv-dose';
import { argument, cases, miss } from './reference';

describe('oxidants, by the weights of the atoms (IUPAC 2021, from memory)', () => {
  const [cl, n, o, na, s, h] = [35.45, 14.007, 15.999, 22.98977, 32.06, 1.008] as const;

  test('two thiosulphates take one chlorine: 7.0 g for a gram', () => {
    const crystal = 2 * na + 2 * s + 3 * o + 5 * (2 * h + o);
    expect(thiosulphateFor(1)).toBeCloseTo((2 * crystal) / (2 * cl), 3);
    expect(thiosulphateFor(1)).toBeCloseTo(7, 2);
  });

  test('chloramine leaves 0.198 g of ammonia nitrogen for a gram of chlorine', () => {
    expect(chloramineNitrogen(1)).toBeCloseTo(n / (2 * cl), 4);
    expect(chloramineNitrogen(1)).toBeCloseTo(0.198, 3);
  });

  test('ozone counts as 1.48 times its weight of chlorine', () => {
    expect(ozoneAsChlorine(1)).toBeCloseTo((2 * cl) / (3 * o), 3);
  });
});

test.each(cases('gas-percent'))('total gas pressure: %s', (_name, row) => {
  expect(miss(row, gasPercent(argument(row, 0), argument(row, 1)))).toBeLessThanOrEqual(1);
});

test('a metre holds down 75.3 mmHg in sea water and 73.3 in fresh, by hydrostatics', () => {
  expect(depthCompensation(1, density(25, 35))).toBeCloseTo((1023.343 * 9.80665) / 133.322, 2);
  expect(depthCompensation(1, density(25, 0))).toBeCloseTo(73.3, 1);
  // The guideline's rule: 76 mmHg is kept at a depth of one metre or more.
  expect(depthCompensation(1.01, density(25, 35))).toBeGreaterThan(76);
});

test.each(cases('gfci-time'))('Class A earth-fault device: %s', (_name, row) => {
  expect(miss(row, gfciTime(argument(row, 0)))).toBeLessThanOrEqual(1);
});

test('an earth-fault device below its current is never counted on', () => {
  expect(gfciTime(5.9)).toBe(Number.POSITIVE_INFINITY);
  expect(gfciTime(5000)).toBe(0.025);
  // lovatoelectric: none below half the rated current, perhaps from there, surely from it on.
  expect(rcdTime(29.9, 30)).toBe(Number.POSITIVE_INFINITY);
  expect([30, 60, 150].map((mA) => rcdTime(mA, 30))).toEqual([0.3, 0.15, 0.04]);
  expect(rcdTime(Number.NaN, 30)).toBeNaN();
});

describe('an ultraviolet unit', () => {
  const clear = (litresPerMinute: number) => uvDose(20, 0, 5, 1.5e-3, litresPerMinute / 60_000);

  test('gives intensity times the time the water stays: half the flow, twice the dose', () => {
    expect(clear(30)).toBeCloseTo(60, 6);
    expect(clear(60)).toBeCloseTo(30, 6);
    expect(clear(120)).toBeCloseTo(15, 6);
  });

  test('gives less in yellow water, as the mean of the light over its path has it', () => {
    let sum = 0;
    const steps = 20_000;
    for (let i = 0; i < steps; i++) sum += 10 ** (-0.1 * ((i + 0.5) / steps) * 5);
    expect(uvDose(20, 0.1, 5, 1.5e-3, 1e-3) / uvDose(20, 0, 5, 1.5e-3, 1e-3)).toBeCloseTo(sum / steps, 6);
  });

  test('without flow never ends, and without a lamp gives nothing', () => {
    expect(uvDose(20, 0.1, 5, 1.5e-3, 0)).toBe(Number.POSITIVE_INFINITY);
    expect(uvDose(0, 0.1, 5, 1.5e-3, 0)).toBe(0);
  });
});

describe('an aerator in its tank', () => {
  test('gives its label in clean water of 20 °C without oxygen, and nothing at saturation', () => {
    expect(fieldTransfer(50, 1, 0, 20, 0, 1)).toBeCloseTo(50, 9);
    expect(fieldTransfer(50, 1, oxygenSaturation(25, 35, 1), 25, 35, 1)).toBeCloseTo(0, 9);
    expect(fieldTransfer(50, 1, 12, 25, 35, 1)).toBeLessThan(0);
  });

  test('is the field equation in its closed form, with the saturation that EN 25814 prints', () => {
    // pe-calc.com/tools/oxygen-transfer, C*20 = 9.09; here 8.26 at 25 °C.
    const closed = (100 * 0.5 * (8.26 - 2) * 1.024 ** 5) / 9.09;
    expect(Math.abs(fieldTransfer(100, 0.5, 2, 25, 0, 1) / closed - 1)).toBeLessThan(1e-3);
  });

  test('in sea water of 25 °C at 5 mg/L gives 22 % of the label', () => {
    expect(fieldTransfer(50, 1, 5, 25, 35, 1)).toBeCloseTo(11, 1);
  });
});
