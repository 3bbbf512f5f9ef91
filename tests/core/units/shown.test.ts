import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import preferred from '#core/units/preferred.json';
import table from '#core/units/shown.json';
import { lookOf, type ShownUnit, show, unitFor } from '#core/units/shown';

const units = Object.keys(table) as ShownUnit[];

test('a value is written with its decimals and its unit, which a line break cannot part', () => {
  expect(show(25.06, 'C')).toBe('25.1\u00a0°C');
  expect(show(432.4, 'L')).toBe('432\u00a0L');
  expect(show(6.5, 'mg/L')).toBe('6.50\u00a0mg/L');
  expect(show(-0.04, 'C')).toBe('0.0\u00a0°C');
  expect(show(-0.06, 'C')).toBe('-0.1\u00a0°C');
});

test('what is not a number is never shown as one', () => {
  for (const unit of units) {
    expect(() => show(Number.NaN, unit)).toThrow(RangeError);
    expect(() => show(Number.POSITIVE_INFINITY, unit)).toThrow(RangeError);
  }
});

test('what is shown is never further from the value than half of its last digit', () => {
  const value = fc.double({ min: -1e6, max: 1e6, noNaN: true });
  fc.assert(
    fc.property(value, fc.constantFrom(...units), (v, unit) => {
      return Math.abs(Number.parseFloat(show(v, unit)) - v) <= 0.5 * 10 ** -lookOf(unit).decimals + 1e-9;
    }),
  );
});

describe.each(['metric', 'us'] as const)('the %s custom', (custom) => {
  test('has for every quantity a unit of the table that measures it', () => {
    const quantities = Object.keys(preferred[custom]) as (keyof (typeof preferred)['metric'])[];
    expect(quantities.length).toBeGreaterThan(8);
    for (const quantity of quantities) {
      expect(units).toContain(unitFor(custom, quantity));
      expect(lookOf(unitFor(custom, quantity)).quantity).toBe(quantity);
    }
  });
});

test('both customs know the same quantities, and Americans read °F and US gallons', () => {
  expect(Object.keys(preferred.us)).toEqual(Object.keys(preferred.metric));
  expect(show(77, unitFor('us', 'temperature'))).toBe('77.0\u00a0°F');
  expect(show(100, unitFor('us', 'volume'))).toBe('100\u00a0US gal');
});
