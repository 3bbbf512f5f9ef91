import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  alkalinityAt,
  bicarbonateShare,
  bufferIntensity,
  carbonAt,
  carbonateShare,
  carbonDioxideByAlkalinity,
  carbonDioxideByCarbon,
  carbonDioxideShare,
  chargePerCarbon,
  emptyConstants,
  phAt,
} from '#core/water/carbonate-balance';
import {
  aragoniteSaturation,
  calciteSaturation,
  fillSeaConstants,
  seaCarbon,
  seaCarbonDioxide,
  seaPh,
} from '#core/water/carbonate-sea';
import { carbonDioxideChart } from '#core/water/carbonate-fresh';
import { CARBON_DIOXIDE, carbonDioxideSaturation } from '#core/water/carbon-dioxide-saturation';
import { density } from '#core/water/density';
import { fromTotalScale } from '#core/water/ph-scales';
import { slopeOf } from './numerics';
import { argument, cases, miss, type Row } from './reference';

/** A whole system of PyCO2SYS: its constants, and its alkalinity and carbon in mol/m³. */
function system(row: Row) {
  const [t, s] = [argument(row, 2), argument(row, 3)];
  const perKg = 1e-6 * density(t, s);
  return {
    k: fillSeaConstants(emptyConstants(), t, s),
    alkalinity: argument(row, 0) * perKg,
    carbon: argument(row, 1) * perKg,
    perKg,
    t,
    s,
  };
}

describe('ten whole systems by PyCO2SYS', () => {
  test.each(cases('sea-ph'))('pH: %s', (_name, row) => {
    const { alkalinity, carbon, t, s } = system(row);
    expect(miss(row, seaPh(alkalinity, carbon, t, s))).toBeLessThanOrEqual(1);
    const back = seaCarbon(alkalinity, seaPh(alkalinity, carbon, t, s), t, s);
    expect(Math.abs(back / carbon - 1)).toBeLessThan(1e-9);
  });

  test.each(cases('sea-partial-pressure'))('partial pressure: %s', (_name, row) => {
    const { k, alkalinity, carbon } = system(row);
    const share = carbonDioxideShare(k, phAt(k, alkalinity, carbon, 8));
    expect(miss(row, (1e6 * carbon * share) / k.solubility)).toBeLessThanOrEqual(1);
  });

  const species: [string, typeof carbonDioxideShare][] = [
    ['sea-carbon-dioxide', carbonDioxideShare],
    ['sea-bicarbonate', bicarbonateShare],
    ['sea-carbonate', carbonateShare],
  ];
  describe.each(species)('%s', (name, share) => {
    test.each(cases(name))('%s', (_name, row) => {
      const { k, alkalinity, carbon, perKg } = system(row);
      expect(miss(row, (carbon * share(k, phAt(k, alkalinity, carbon, 8))) / perKg)).toBeLessThanOrEqual(1);
    });
  });

  const saturations: [string, typeof aragoniteSaturation][] = [
    ['aragonite-saturation', aragoniteSaturation],
    ['calcite-saturation', calciteSaturation],
  ];
  describe.each(saturations)('%s', (name, saturation) => {
    test.each(cases(name))('%s', (_name, row) => {
      const { alkalinity, carbon, t, s } = system(row);
      expect(miss(row, saturation(alkalinity, seaPh(alkalinity, carbon, t, s), t, s))).toBeLessThanOrEqual(1);
    });
  });
});

test('the fresh-water chart shows three to four times the carbon dioxide of sea water', () => {
  for (const ph of [7.6, 8, 8.2]) {
    const ratio = carbonDioxideChart(8, ph) / seaCarbonDioxide(8 * 0.35665, ph, 25, 35);
    expect(ratio).toBeGreaterThan(2.9);
    expect(ratio).toBeLessThan(4);
  }
});

test('air alone, at 420 ppm, gives the pH that PyCO2SYS gives: 8.0259 at 2300 µmol/kg, by a meter 0.137 more', () => {
  const perKg = 1e-6 * density(25, 35);
  // 420 µatm in wet air: its part of dry air is a little more.
  const wanted = carbonDioxideSaturation(25, 35, 420 / (1 - 0.03068), 1);
  expect(wanted / CARBON_DIOXIDE / perKg).toBeCloseTo(11.8866, 2);
  expect(seaCarbonDioxide(2300 * perKg, 8.0259, 25, 35)).toBeCloseTo(wanted, 3);
  expect(fromTotalScale(8.0259, 'nbs', 25, 35) - 8.0259).toBeCloseTo(0.137, 3);
});

const alkalinity = fc.double({ min: 0.2, max: 8, noNaN: true });
const ph = fc.double({ min: 6, max: 9.5, noNaN: true });
const temperature = fc.double({ min: 2, max: 35, noNaN: true });
const salinity = fc.double({ min: 1, max: 43, noNaN: true });

describe('the balance', () => {
  test('species add up to the carbon, and alkalinity built from them is the one that went in, to 1e-9', () => {
    fc.assert(
      fc.property(alkalinity, ph, temperature, salinity, (a, at, t, s) => {
        const k = fillSeaConstants(emptyConstants(), t, s);
        const carbon = carbonAt(k, a, at);
        const parts = carbonDioxideShare(k, at) + bicarbonateShare(k, at) + carbonateShare(k, at);
        expect(parts).toBeCloseTo(1, 12);
        if (carbon > 0) expect(Math.abs(alkalinityAt(k, carbon, at) / a - 1)).toBeLessThan(1e-9);
      }),
    );
  });

  test('pH is found again from any guess', () => {
    const guess = fc.double({ min: -5, max: 20, noNaN: true });
    fc.assert(
      fc.property(alkalinity, ph, temperature, salinity, guess, (a, at, t, s, from) => {
        const k = fillSeaConstants(emptyConstants(), t, s);
        const carbon = carbonAt(k, a, at);
        fc.pre(carbon > 0.01);
        expect(phAt(k, a, carbon, from)).toBeCloseTo(at, 8);
      }),
    );
  });

  test('slopes are those of the law, by central differences', () => {
    fc.assert(
      fc.property(alkalinity, fc.double({ min: 6.5, max: 8.8, noNaN: true }), temperature, salinity, (a, at, t, s) => {
        const k = fillSeaConstants(emptyConstants(), t, s);
        const carbon = carbonAt(k, a, at);
        fc.pre(carbon > 0.1);
        expect(bufferIntensity(k, carbon, at) / slopeOf((x) => alkalinityAt(k, carbon, x), at, 1e-3)).toBeCloseTo(1, 6);
        const dissolved = (c: number, al: number) => c * carbonDioxideShare(k, phAt(k, al, c, at));
        const byCarbon = slopeOf((c) => dissolved(c, a), carbon, 1e-3 * carbon);
        const byAlkalinity = slopeOf((al) => dissolved(carbon, al), a, 1e-3 * a);
        expect(carbonDioxideByCarbon(k, carbon, at) / byCarbon).toBeCloseTo(1, 3);
        expect(carbonDioxideByAlkalinity(k, carbon, at) / byAlkalinity).toBeCloseTo(1, 3);
        const byPh = slopeOf((c) => phAt(k, a, c, at), carbon, 1e-3 * carbon);
        expect(-chargePerCarbon(k, at) / bufferIntensity(k, carbon, at) / byPh).toBeCloseTo(1, 3);
      }),
      { numRuns: 60 },
    );
  });

  test('more carbon is more acid, and more alkalinity is less', () => {
    fc.assert(
      fc.property(alkalinity, alkalinity, temperature, salinity, (a, c, t, s) => {
        return seaPh(a, 1.05 * c, t, s) < seaPh(a, c, t, s) && seaPh(1.05 * a, c, t, s) > seaPh(a, c, t, s);
      }),
    );
  });

  test('nothing broken comes out as a pH', () => {
    const k = fillSeaConstants(emptyConstants(), 25, 35);
    expect(phAt(k, Number.NaN, 2, 8)).toBeNaN();
    expect(phAt(k, 2, Number.NaN, 8)).toBeNaN();
    expect(phAt(k, -1e9, 2, 8)).toBeCloseTo(1, 6);
    expect(phAt(k, 1e9, 2, 8)).toBeCloseTo(13, 6);
    expect(carbonAt(k, 0.01, 9.5)).toBe(0);
  });
});

test('constants do not jump where they go over from brackish water to the sea', () => {
  for (const s of [19, 25]) {
    expect(seaPh(2.4, 2.1, 20, s + 1e-6)).toBeCloseTo(seaPh(2.4, 2.1, 20, s - 1e-6), 5);
  }
});
