import { SENSOR_QUANTITIES } from '#core/facility/system';
import { fromCustom, readingSaid, readingSymbol, toCustom } from '#core/readings/figures';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

describe('a reading in the units of a person', () => {
  // The inch is 25.4 mm and the US gallon 3.785 411 784 L exactly (NIST Handbook 44, appendix C, from memory).
  test.each([
    ['temperature', 25, '25.0 °C', '77.0 °F'],
    ['level', 25.4, '25 mm', '1.0 in'],
    ['flow', 3785.411784, '3785 L/h', '1000 US gal/h'],
    ['ph', 8.1, '8.10', '8.10'],
    ['oxygen', 6.5, '6.50 mg/L', '6.50 mg/L'],
    ['level', -0.2, '0 mm', '0.0 in'],
  ] as const)('%s %s reads %s, and %s', (quantity, value, metric, us) => {
    const plain = (said: string) => said.replaceAll('\u00a0', ' ');
    expect(plain(readingSaid(quantity, 'metric', value))).toBe(metric);
    expect(plain(readingSaid(quantity, 'us', value))).toBe(us);
  });

  test('is the same again once it was typed, in either custom', () => {
    const any = fc.tuple(fc.constantFrom(...SENSOR_QUANTITIES), fc.double({ min: 0, max: 1000, noNaN: true }));
    fc.assert(
      fc.property(any, fc.constantFrom('metric' as const, 'us' as const), ([quantity, value], custom) => {
        const there = toCustom(quantity, custom, value);
        expect(fromCustom(quantity, custom, there)).toBeCloseTo(value, 6);
        expect(typeof readingSymbol(quantity, custom)).toBe('string');
      }),
    );
  });
});
