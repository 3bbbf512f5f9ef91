import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { alkalinityAt, emptyConstants } from '#core/water/carbonate-balance';
import {
  carbonDioxideChart,
  fillFreshConstants,
  freshCarbon,
  freshCarbonDioxide,
  freshPh,
} from '#core/water/carbonate-fresh';
import { argument, cases, miss } from './reference';

const DKH = 0.35665;

test.each(cases('carbon-dioxide-chart'))('the chart as it is printed: %s', (_name, row) => {
  expect(miss(row, carbonDioxideChart(argument(row, 0), argument(row, 1)))).toBeLessThanOrEqual(1);
});

describe('the whole balance', () => {
  test('lies 8 to 20 % above the chart at 25 °C', () => {
    for (const strength of [0, 0.005]) {
      for (const ph of [6.6, 7, 7.4]) {
        const ratio = freshCarbonDioxide(4 * DKH, ph, 25, strength) / carbonDioxideChart(4, ph);
        expect(ratio).toBeGreaterThan(1.07);
        expect(ratio).toBeLessThan(1.2);
      }
    }
  });

  test('is [CO2] = h²·(A − Kw/h + h)/(K1·h + 2·K1·K2) in the closed form, without ions', () => {
    const k = fillFreshConstants(emptyConstants(), 25, 0);
    const h = 1e-7;
    const closed = ((4 * DKH - k.kw / h + k.acid * h) * h * h) / (k.k1 * h + 2 * k.k1 * k.k2);
    expect(freshCarbonDioxide(4 * DKH, 7, 25, 0)).toBeCloseTo(44.0095 * closed, 9);
  });

  test('pH and carbon are each other’s inverse', () => {
    const alkalinity = fc.double({ min: 0.1, max: 8, noNaN: true });
    const ph = fc.double({ min: 5.5, max: 9, noNaN: true });
    const temperature = fc.double({ min: 0, max: 40, noNaN: true });
    const strength = fc.double({ min: 0, max: 0.1, noNaN: true });
    fc.assert(
      fc.property(alkalinity, ph, temperature, strength, (a, at, t, i) => {
        const carbon = freshCarbon(a, at, t, i);
        expect(freshPh(a, carbon, t, i)).toBeCloseTo(at, 8);
        const k = fillFreshConstants(emptyConstants(), t, i);
        expect(Math.abs(alkalinityAt(k, carbon, at) / a - 1)).toBeLessThan(1e-9);
      }),
    );
  });

  test('pure water is neutral, and carbon dioxide alone sours it to 5.65 at 420 µatm (from memory)', () => {
    expect(freshPh(0, 0, 25, 0)).toBeCloseTo(7, 2);
    const k = fillFreshConstants(emptyConstants(), 25, 0);
    const dissolved = 420e-6 * k.solubility;
    const h = Math.sqrt((k.k1 * dissolved) / k.acid);
    const ph = freshPh(0, dissolved + k.acid * h, 25, 0);
    expect(ph).toBeCloseTo(-Math.log10(h), 3);
    expect(ph).toBeGreaterThan(5.55);
    expect(ph).toBeLessThan(5.7);
  });
});

test('another acid breaks it: a tenth of the alkalinity carried by something else hides a tenth of the carbon dioxide', () => {
  const whole = freshCarbonDioxide(4 * DKH, 7, 25, 0);
  expect(freshCarbonDioxide(0.9 * 4 * DKH, 7, 25, 0) / whole).toBeCloseTo(0.9, 2);
});
