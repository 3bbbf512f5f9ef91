import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  oxygenSaturation,
  oxygenSaturationBySalinity,
  oxygenSaturationByTemperature,
  oxygenSaturationLaw,
} from '#core/water/oxygen-saturation';
import { slopeOf } from './numerics';
import { argument, cases, miss } from './reference';

const temperature = fc.double({ min: 0, max: 40, noNaN: true });
const salinity = fc.double({ min: 0, max: 40, noNaN: true });
const pressure = fc.double({ min: 0.5, max: 1.1, noNaN: true });

test.each(cases('oxygen-saturation'))('Benson & Krause: %s', (_name, row) => {
  expect(miss(row, oxygenSaturation(argument(row, 0), argument(row, 1), argument(row, 2)))).toBeLessThanOrEqual(1);
});

test('the pressure term is the printed one, written out here without nesting, to 1e-12', () => {
  fc.assert(
    fc.property(temperature, pressure, (t, p) => {
      const T = t + 273.15;
      const u = Math.exp(11.8571 - 3840.7 / T - 216_961 / T ** 2);
      const theta = 0.000975 - 1.426e-5 * t + 6.436e-8 * t ** 2;
      const factor = ((p - u) * (1 - theta * p)) / ((1 - u) * (1 - theta));
      return Math.abs(oxygenSaturation(t, 35, p) / oxygenSaturation(t, 35, 1) / factor - 1) < 1e-12;
    }),
  );
});

test('the linear salinity correction of EN 25814 agrees within about 1 %, which is as good as it is', () => {
  // K in mg/L for each g/kg: manualslib.es/manual/67236, page 52.
  const correction: [number, number][] = [
    [0, 0.0875],
    [10, 0.0632],
    [15, 0.0545],
    [20, 0.0475],
    [25, 0.0421],
    [30, 0.0371],
  ];
  for (const [t, k] of correction) {
    const linear = oxygenSaturation(t, 0, 1) - 35 * k;
    expect(Math.abs(linear / oxygenSaturation(t, 35, 1) - 1), `${t} °C`).toBeLessThan(0.011);
  }
});

describe('traps', () => {
  test('θ takes °C: fed with kelvin it would move oxygen at 0.8 atm by more than the published digits', () => {
    const theta = (x: number) => 9.75e-4 - 1.426e-5 * x + 6.436e-8 * x * x;
    const factor = (x: number) => (1 - 0.8 * theta(x)) / (1 - theta(x));
    const wrong = (oxygenSaturation(20, 0, 0.8) * factor(293.15)) / factor(20);
    expect(Math.abs(oxygenSaturation(20, 0, 0.8) - 7.232)).toBeLessThan(0.002);
    expect(Math.abs(wrong - 7.232)).toBeGreaterThan(0.002);
  });

  test('the table labelled by salinity that is really by chloride is not met', () => {
    // docslib.org/solubility-of-oxygen-in-water at 0 °C and "salinity" 5, 10, 15 and 20 g/L.
    const table: [number, number][] = [
      [5, 13.79],
      [10, 12.97],
      [15, 12.14],
      [20, 11.32],
    ];
    for (const [s, printed] of table) {
      expect(oxygenSaturation(0, s, 1) - printed).toBeGreaterThan(0.3);
      expect(Math.abs(oxygenSaturation(0, 1.80655 * s, 1) - printed)).toBeLessThan(0.09);
    }
  });

  test('salt may not be forgotten: 6 mg/L at 25 °C are 89 % in sea water, not 73 %', () => {
    expect((100 * 6) / oxygenSaturation(25, 35, 1)).toBeCloseTo(88.6, 1);
    expect((100 * 6) / oxygenSaturation(25, 0, 1)).toBeCloseTo(72.6, 1);
  });

  test('pressure is in atmospheres: pascals are refused at the edge', () => {
    expect(() => oxygenSaturationLaw.checked(25, 35, 101_325)).toThrow('oxygen-saturation: pressure is 101325');
  });
});

describe('warm, salt and thin air', () => {
  test('each lower what the water holds', () => {
    fc.assert(
      fc.property(temperature, salinity, pressure, (t, s, p) => {
        const here = oxygenSaturation(t, s, p);
        return (
          oxygenSaturation(t + 0.1, s, p) < here &&
          oxygenSaturation(t, s + 0.1, p) < here &&
          oxygenSaturation(t, s, p - 0.01) < here
        );
      }),
    );
  });
});

describe('the slopes', () => {
  test('are those of the law, by central differences', () => {
    fc.assert(
      fc.property(temperature, salinity, pressure, (t, s, p) => {
        const byTemperature = slopeOf((x) => oxygenSaturation(x, s, p), t, 0.05);
        const bySalinity = slopeOf((x) => oxygenSaturation(t, x, p), s + 1, 0.05);
        expect(oxygenSaturationByTemperature(t, s, p) / byTemperature).toBeCloseTo(1, 8);
        expect(oxygenSaturationBySalinity(t, s + 1, p) / bySalinity).toBeCloseTo(1, 8);
      }),
    );
  });

  test('are 0 where the argument is held', () => {
    expect(oxygenSaturationByTemperature(80, 35, 1)).toBe(0);
    expect(Math.abs(oxygenSaturationBySalinity(25, 300, 1))).toBe(0);
  });
});

test('goes on to −5 and 60 °C, a salinity of 100, and 0.4 and 1.5 atm, and is held there', () => {
  const here = oxygenSaturation;
  expect(here(-6, 35, 1)).toBe(here(-5, 35, 1));
  expect(here(-4.99, 35, 1)).not.toBe(here(-5, 35, 1));
  expect(here(61, 35, 1)).toBe(here(60, 35, 1));
  expect(here(59.99, 35, 1)).not.toBe(here(60, 35, 1));
  expect(here(25, 101, 1)).toBe(here(25, 100, 1));
  expect(here(25, 99.99, 1)).not.toBe(here(25, 100, 1));
  expect(here(25, 35, 0.39)).toBe(here(25, 35, 0.4));
  expect(here(25, 35, 0.401)).not.toBe(here(25, 35, 0.4));
  expect(here(25, 35, 1.51)).toBe(here(25, 35, 1.5));
  expect(here(25, 35, 1.499)).not.toBe(here(25, 35, 1.5));
});

test('never falls to nothing or below, however wild the state', () => {
  const wild = fc.double({ min: -1e6, max: 1e6, noNaN: true });
  fc.assert(fc.property(wild, wild, wild, (t, s, p) => oxygenSaturation(t, s, p) > 0));
});
