import fc from 'fast-check';
import psychrolib from 'psychrolib';
import { expect, test } from 'vitest';
import { vapourPressure, vapourPressureSlope } from '#core/water/vapour-pressure';
import { slopeOf } from './numerics';
import { argument, cases, miss } from './reference';

psychrolib.SetUnitSystem(psychrolib.SI);

test.each(cases('vapour-pressure'))('over water: %s', (_name, row) => {
  expect(miss(row, vapourPressure(argument(row, 0)))).toBeLessThanOrEqual(1);
});

test('psychrolib gives the same to 1e-9 from 1 to 200 °C', () => {
  const temperature = fc.double({ min: 1, max: 200, noNaN: true });
  fc.assert(fc.property(temperature, (t) => Math.abs(vapourPressure(t) / psychrolib.GetSatVapPres(t) - 1) < 1e-9));
});

test('below freezing it is that of supercooled water, above that of ice, which psychrolib gives', () => {
  expect(vapourPressure(-10) / psychrolib.GetSatVapPres(-10)).toBeCloseTo(1.1, 1);
});

test('Magnus’ formula lies 0.3 % below, as it should', () => {
  // WMO form, novasolver.jp/zh/tools/dew-point-rh.html.
  for (const t of [20, 25, 28]) {
    const magnus = 611.2 * Math.exp((17.62 * t) / (243.12 + t));
    expect(vapourPressure(t) / magnus - 1).toBeGreaterThan(0.002);
    expect(vapourPressure(t) / magnus - 1).toBeLessThan(0.004);
  }
});

test('the slope is that of the law, by central differences', () => {
  const temperature = fc.double({ min: -39, max: 199, noNaN: true });
  fc.assert(
    fc.property(temperature, (t) => {
      expect(vapourPressureSlope(t) / slopeOf(vapourPressure, t, 0.01)).toBeCloseTo(1, 8);
    }),
  );
});

test('the slope is that of Clapeyron’s relation, L·e/(R·T²), within 0.4 %', () => {
  for (const t of [5, 15, 25, 35]) {
    const T = t + 273.15;
    const clapeyron = ((2.501e6 - 2370 * t) * vapourPressure(t)) / (461.52 * T * T);
    expect(Math.abs(vapourPressureSlope(t) / clapeyron - 1)).toBeLessThan(0.004);
  }
});

test('always rises with temperature, and is held beyond −40 and 200 °C', () => {
  const temperature = fc.double({ min: -40, max: 199, noNaN: true });
  fc.assert(fc.property(temperature, (t) => vapourPressure(t + 0.01) > vapourPressure(t)));
  expect(vapourPressure(-300)).toBe(vapourPressure(-40));
  expect(vapourPressure(1e9)).toBe(vapourPressure(200));
  expect(vapourPressureSlope(1e9)).toBe(0);
});
