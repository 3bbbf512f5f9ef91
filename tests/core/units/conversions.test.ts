import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CONVERSIONS } from './conversions';

describe.each(CONVERSIONS)('$name', ({ name, to, from, low, high }) => {
  test('comes back as it went, to 1e-12', () => {
    const value = fc.double({ min: low, max: high, noNaN: true });
    fc.assert(
      fc.property(value, (v) => {
        const back = to(from(v) * (1 - 1e-15));
        return Math.abs(back - v) <= 1e-12 * Math.max(1, Math.abs(v));
      }),
    );
  });

  test('keeps the order of values', () => {
    const value = fc.double({ min: low, max: high - 1e-3 * Math.abs(high), noNaN: true });
    fc.assert(fc.property(value, (v) => from(v + 1e-3 * Math.abs(high)) > from(v)));
  });

  test('refuses what is not a number and what cannot be meant, naming the quantity', () => {
    const quantity = name.slice(0, name.indexOf(' in '));
    for (const value of [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 1e300, -1e300]) {
      expect(() => to(value)).toThrow(RangeError);
      expect(() => from(value)).toThrow(RangeError);
      expect(() => to(value)).toThrow(`${quantity}: `);
    }
    expect(() => from(low - 1e-6 * (1 + Math.abs(low)))).toThrow('cannot be meant');
    expect(() => from(high * (1 + 1e-9))).toThrow('cannot be meant');
  });

  test('accepts both ends of what is believed', () => {
    expect(Number.isFinite(from(low))).toBe(true);
    expect(Number.isFinite(from(high))).toBe(true);
  });
});
