import { toCubicMetresPerSecond } from '#core/units/flow';
import { toSquareMetres } from '#core/units/area';
import { toSeconds } from '#core/units/duration';
import { toKilograms } from '#core/units/mass';
import { toMetres } from '#core/units/length';
import { toWatts } from '#core/units/power';
import { toCelsius } from '#core/units/temperature';
import { toCubicMetres } from '#core/units/volume';
import { amount } from '#shape/facility/amount';
import { type FieldUnit, fromText, unitOf } from '#shape/facility/field-unit';
import { describe, expect, test } from 'vitest';

describe('a number with its unit', () => {
  test.each([
    ['78 °F', 'C', 230 / 9],
    ['-4°F', 'C', -20],
    ['25 C', 'C', 25],
    ['120 gal', 'L', 454.24941408],
    ['100 imp gal', 'L', 454.609],
    ['25 m3', 'L', 25_000],
    ['25 m³', 'L', 25_000],
    ['500 mL', 'L', 0.5],
    ['2 Ft2', 'M2', 0.18580608],
    ['1e3 GPH', 'LPerH', 3785.411784],
    ['3 in', 'Mm', 76.19999999999999],
    ['1.5 h', 'Min', 90],
    ['90 s', 'Min', 1.5],
    ['2 weeks', 'Days', 14],
    ['70%', 'share', 0.7],
    ['0.25 kW', 'W', 250],
    ['3412 BTU/h', 'W', 999.9584914276222],
  ] as const)('%s becomes the %s of its field', (text, unit, value) => {
    expect(fromText(text, unit)).toBeCloseTo(value, 10);
  });

  test.each([
    ['78', 'C'],
    ['warm', 'C'],
    ['25 L', 'C'],
    ['1,000 L', 'L'],
    ['12 5 L', 'L'],
    ['10 constructor', 'L'],
    ['35 ppt', 'psu'],
    ['', 'L'],
  ] as const)('%j is none for a field in %s', (text, unit) => {
    expect(fromText(text, unit)).toBeNull();
  });

  test.each([
    ['C', '°F', () => toCelsius(77.7, 'F')],
    ['L', 'gal', () => toCubicMetres(77.7, 'galUS') * 1000],
    ['L', 'imp gal', () => toCubicMetres(77.7, 'galUK') * 1000],
    ['L', 'ml', () => toCubicMetres(77.7, 'mL') * 1000],
    ['LPerH', 'gal/min', () => toCubicMetresPerSecond(77.7, 'galUS/min') * 3_600_000],
    ['LPerH', 'imp gal/h', () => toCubicMetresPerSecond(77.7, 'galUK/h') * 3_600_000],
    ['LPerH', 'm3/h', () => toCubicMetresPerSecond(77.7, 'm3/h') * 3_600_000],
    ['M2', 'ft2', () => toSquareMetres(77.7, 'ft2')],
    ['M2', 'in2', () => toSquareMetres(77.7, 'in2')],
    ['Mm', 'in', () => toMetres(77.7, 'in') * 1000],
    ['M', 'ft', () => toMetres(77.7, 'ft')],
    ['G', 'lb', () => toKilograms(77.7, 'lb') * 1000],
    ['GPerDay', 'oz/day', () => toKilograms(77.7, 'oz') * 1000],
    ['W', 'btu/h', () => toWatts(77.7, 'Btu/h')],
    ['S', 'h', () => toSeconds(77.7, 'h')],
    ['Min', 'd', () => toSeconds(77.7, 'd') / 60],
  ] as const)('in %s from %s is what the core makes of it', (unit, other, core) => {
    const expected = core();
    expect(Math.abs((fromText(`77.7 ${other}`, unit) ?? 0) / expected - 1)).toBeLessThan(1e-14);
  });

  const EXAMPLES = [
    'C',
    'L',
    'LPerH',
    'M2',
    'Mm',
    'M',
    'S',
    'Min',
    'H',
    'Days',
    'W',
    'G',
    'GPerDay',
    'share',
    'A',
    'V',
  ] as const;
  test.each(EXAMPLES.map((unit): [FieldUnit] => [unit]))(
    'the example given for %s is understood and within bounds',
    (unit) => {
      const { example = '', least = 0, more = least, most } = unitOf(unit);
      const value = fromText(example, unit) ?? Number.NaN;
      expect(value).toBeGreaterThan(more);
      expect(value).toBeLessThan(most);
    },
  );
});

describe('a field', () => {
  const share = amount('share', 'A share');
  const volume = amount('L', 'A volume');
  const temperature = amount('C', 'A temperature');

  test.each([
    [share, [0, 1, '100 %'], [-0.001, 1.001, '101 %', Number.NaN, Number.POSITIVE_INFINITY]],
    [volume, [0.001, 1e8, '1 gal'], [0, -1, 1.1e8, '0 gal', '-3 L']],
    [temperature, [-5, 60, '23 °F', '140 °F'], [-5.1, 60.1, '22 °F', '141 °F', null, true, [25]]],
  ])('takes what lies within its hard bounds and nothing else', (shape, taken, refused) => {
    for (const given of taken) expect(shape.safeParse(given).success, String(given)).toBe(true);
    for (const given of refused) expect(shape.safeParse(given).success, String(given)).toBe(false);
  });

  test('may have bounds of its own', () => {
    const air = amount('C', 'Air', { least: -30, most: 60 });
    expect(air.parse(-30)).toBe(-30);
    expect(air.safeParse(-31).success).toBe(false);
  });
});
