import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { PH_SCALES } from '#core/facility/system';
import { ammoniaPkFree, ammoniaPkFresh, ammoniaPkTotal } from '#core/water/ammonia-pk';
import { AMMONIA_PER_NITROGEN, unionisedShare, unionisedShareByPh } from '#core/water/unionised-ammonia';
import { slopeOf } from './numerics';
import { argument, cases, miss } from './reference';

const ph = fc.double({ min: 6, max: 10, noNaN: true });
const temperature = fc.double({ min: 0, max: 39, noNaN: true });
const salinity = fc.double({ min: 0, max: 40, noNaN: true });
const scale = fc.constantFrom(...PH_SCALES);

test.each(cases('unionised-share'))('fresh water: %s', (_name, row) => {
  for (const on of PH_SCALES) {
    expect(miss(row, unionisedShare(argument(row, 0), on, argument(row, 1), 0))).toBeLessThanOrEqual(1);
  }
});

test.each(cases('unionised-share-total'))('sea water, total scale: %s', (_name, row) => {
  const share = unionisedShare(argument(row, 0), 'total', argument(row, 1), argument(row, 2));
  expect(miss(row, share)).toBeLessThanOrEqual(1);
});

test.each(cases('unionised-share-free'))('sea water, free scale: %s', (_name, row) => {
  const share = unionisedShare(argument(row, 0), 'free', argument(row, 1), argument(row, 2));
  expect(miss(row, share)).toBeLessThanOrEqual(1);
});

describe('traps', () => {
  test('a reading of a meter in the usual buffers, taken for the total scale, overstates it by a third', () => {
    // PyCO2SYS: pH 8.2 on the NBS scale is 8.063 on the total scale at 25 °C and 35.
    const right = unionisedShare(8.2, 'nbs', 25, 35);
    expect(right).toBeCloseTo(0.0637, 4);
    expect(right).toBeCloseTo(unionisedShare(8.063, 'total', 25, 35), 4);
    const wrong = unionisedShare(8.2, 'total', 25, 35);
    expect(wrong).toBeCloseTo(0.0853, 4);
    expect(wrong / right - 1).toBeGreaterThan(0.32);
    expect(wrong / right - 1).toBeLessThan(0.36);
  });

  test('2727.92, as one manual prints, misses the published table; 2729.92 hits it', () => {
    // Extension table after Emerson, pH 8: 24 °C 0.0502.
    const misprinted = 1 / (1 + 10 ** (0.09018 + 2727.92 / 297.15 - 8));
    expect(Math.abs(misprinted - 0.0502)).toBeGreaterThan(5e-4);
    expect(Math.abs(unionisedShare(8, 'nbs', 24, 0) - 0.0502)).toBeLessThan(1e-4);
  });

  test('the 32 °C column of that table is not of 32 °C but of 32.6', () => {
    expect(0.0877 - unionisedShare(8, 'nbs', 32, 0)).toBeGreaterThan(0.003);
    expect(Math.abs(unionisedShare(8, 'nbs', 32.6, 0) - 0.0877)).toBeLessThan(5e-4);
  });

  test('Bell’s line takes °C: fed Kelvin it leaves no acid at all, fed °C it agrees within 0.05 of pK on the free scale', () => {
    // Bell and others 2007/08, as in public model codes: 10.0423 − 0.0315536·t + 0.003071·S.
    const bell = (t: number) => 10.0423 - 0.0315536 * t + 0.003071 * 35;
    expect(bell(25)).toBeCloseTo(9.3609, 4);
    expect(Math.abs(bell(25) - ammoniaPkFree(25, 35))).toBeLessThan(0.05);
    expect(bell(298.15)).toBeLessThan(1);
  });

  test('one code prints 7.14045e-5 for 7.1047e-5: 0.0004 of pK at 35, as its source says', () => {
    expect((7.14045e-5 - 7.1047e-5) * 35 * 35).toBeCloseTo(0.0004, 4);
  });
});

test('Bower & Bidwell 1978, salinity 34: the free and the NBS branch lie within 8 % of their table', () => {
  // azmanual.top/manuals/596720, p. 5: percent by pH (rows) at 10, 15, 20 and 25 °C.
  const table: [number, number[]][] = [
    [7.5, [0.459, 0.665, 0.963, 1.39]],
    [8.0, [1.44, 2.07, 2.98, 4.28]],
    [8.2, [2.26, 3.25, 4.65, 6.61]],
    [8.5, [4.41, 6.28, 8.87, 12.4]],
  ];
  for (const [at, row] of table) {
    for (const [i, percent] of row.entries()) {
      const t = 10 + 5 * i;
      for (const on of ['free', 'nbs'] as const) {
        expect(Math.abs((100 * unionisedShare(at, on, t, 34)) / percent - 1), `${on} ${at} ${t}`).toBeLessThan(0.08);
      }
      expect((100 * unionisedShare(at, 'total', t, 34)) / percent).toBeGreaterThan(1.15);
    }
  }
});

test('other published forms lie within 0.12 of pK at 25 °C and 35', () => {
  // Hampson 1977 as the agency used it: 9.3241 (free); Yao & Millero 1995 by seacarb, run: 9.2692 on the total scale.
  expect(Math.abs(ammoniaPkFree(25, 35) - 9.3241)).toBeLessThan(0.02);
  expect(Math.abs(ammoniaPkTotal(25, 35) - 9.2692)).toBeLessThan(0.05);
  expect(Math.abs(ammoniaPkTotal(10, 35) - 9.8013)).toBeLessThan(0.05);
});

test('total ammonia of 1 mg/L at 24 °C and pH 8 holds 0.0502 mg/L un-ionised, a worked example', () => {
  // edis.ifas.ufl.edu FA031/FA16.
  expect(1 * unionisedShare(8, 'nbs', 24, 0)).toBeCloseTo(0.0502, 4);
  expect(AMMONIA_PER_NITROGEN).toBeCloseTo(1.2159, 4);
});

test('rises with pH and with temperature and stays between 0 and 1, on every scale', () => {
  fc.assert(
    fc.property(ph, scale, temperature, salinity, (at, on, t, s) => {
      const here = unionisedShare(at, on, t, s);
      return (
        here > 0 && here < 1 && unionisedShare(at + 0.01, on, t, s) > here && unionisedShare(at, on, t + 1, s) > here
      );
    }),
  );
});

test('the scales are one in fresh water, and the least salt changes it by less than 0.7 %', () => {
  fc.assert(
    fc.property(ph, temperature, (at, t) => {
      const fresh = unionisedShare(at, 'total', t, 0);
      expect(unionisedShare(at, 'free', t, 0)).toBe(fresh);
      expect(unionisedShare(at, 'nbs', t, 0)).toBe(fresh);
      for (const on of PH_SCALES) expect(Math.abs(unionisedShare(at, on, t, 1e-9) / fresh - 1)).toBeLessThan(0.007);
    }),
  );
});

test('the slope by pH is that of the law, by central differences', () => {
  fc.assert(
    fc.property(ph, scale, temperature, salinity, (at, on, t, s) => {
      const slope = slopeOf((x) => unionisedShare(x, on, t, s), at, 1e-3);
      expect(unionisedShareByPh(unionisedShare(at, on, t, s)) / slope).toBeCloseTo(1, 8);
    }),
  );
});

test('a broken pH is never turned into a harmless share', () => {
  for (const on of PH_SCALES) {
    expect(unionisedShare(Number.NaN, on, 25, 35)).toBeNaN();
    expect(unionisedShare(Number.NaN, on, 25, 0)).toBeNaN();
    expect(unionisedShare(8, on, Number.NaN, 35)).toBeNaN();
  }
  expect(ammoniaPkFresh(Number.NaN)).toBeNaN();
});
