import { describe, expect, test } from 'vitest';
import { SENSOR_QUANTITIES, type SensorQuantity } from '#core/facility/system';
import bounds from '#core/readings/bounds.json';
import { judge, judgeTogether, type Neighbour } from '#core/readings/judge';
import reasons from '#core/readings/reasons.json';
import sentinels from '#core/readings/sentinels.json';
import { toFacilityUnit } from '#core/readings/units';

/** Judges a value as it was written. */
function judged(quantity: SensorQuantity, value: number, unit?: string): string {
  const converted = toFacilityUnit(quantity, value, unit);
  if (!converted.ok) throw new Error(converted.reason.why);
  const { quality, reason } = judge(quantity, converted.value, { value, ...(unit === undefined ? {} : { unit }) });
  return reason === undefined ? quality : `${quality} ${reason}`;
}

describe('a reading', () => {
  test.each<[SensorQuantity, number, string | undefined, string]>([
    ['temperature', 25.1, 'Cel', 'good'],
    ['temperature', 25.1, undefined, 'good'],
    ['temperature', 85, 'Cel', 'bad power-on'],
    ['temperature', 85, undefined, 'bad power-on'],
    ['temperature', 85, 'degF', 'good'],
    ['temperature', 85, '°F', 'good'],
    ['temperature', 185, 'degF', 'suspect unlikely'],
    ['temperature', 358.15, 'K', 'bad power-on'],
    ['temperature', 85.1, 'Cel', 'suspect unlikely'],
    ['temperature', -127, 'Cel', 'bad disconnected'],
    ['temperature', -127, 'degF', 'bad impossible'],
    ['temperature', -1.9, 'Cel', 'good'],
    ['temperature', 45.01, 'Cel', 'suspect unlikely'],
    ['temperature', 100.1, 'Cel', 'bad impossible'],
    ['temperature', -999, 'Cel', 'bad error-value'],
    ['salinity', 9999, undefined, 'bad error-value'],
    ['conductivity', 65535, 'uS/cm', 'bad error-value'],
    ['flow', 2500, 'L/h', 'good'],
    ['flow', -10, 'L/h', 'suspect unlikely'],
    ['level', -350, 'mm', 'good'],
    ['level', -32768, 'mm', 'bad error-value'],
    ['salinity', 35, 'psu', 'good'],
    ['salinity', 43, undefined, 'suspect unlikely'],
    ['oxygen', 0, 'mg/L', 'good'],
    ['oxygen', 21, 'mg/L', 'suspect unlikely'],
    ['oxygen-saturation', 0.95, '/', 'good'],
    ['oxygen-saturation', 477, '%', 'suspect unlikely'],
    ['ph', 8.2, 'pH', 'good'],
    ['ph', 0, 'pH', 'bad impossible'],
    ['ph', 3.5, 'pH', 'suspect unlikely'],
    ['leak', 1, undefined, 'good'],
    ['leak', 0.5, undefined, 'bad impossible'],
    ['redox', 0.35, 'V', 'good'],
    ['watts', -3, 'W', 'suspect unlikely'],
  ])('of %s at %s %s is %s', (quantity, value, unit, expected) => {
    expect(judged(quantity, value, unit)).toBe(expected);
  });

  test.each(SENSOR_QUANTITIES)(
    'of %s is good inside its bounds, at both ends of them, and never outside',
    (quantity) => {
      const { bad, suspect, source } = bounds[quantity];
      const [low = 0, high = 0] = suspect;
      expect(bad[0]).toBeLessThanOrEqual(low);
      expect(bad[1]).toBeGreaterThanOrEqual(high);
      expect(source).not.toBe('');
      for (const end of [low, high]) expect(judged(quantity, end)).toBe('good');
      for (const beyond of [(bad[0] ?? 0) - 1e-3, (bad[1] ?? 0) + 1e-3])
        expect(judged(quantity, beyond)).toBe('bad impossible');
    },
  );

  test('is never judged for a reason that has no sentence', () => {
    for (const { reason, source } of sentinels) {
      expect(Object.keys(reasons)).toContain(reason);
      expect(source).not.toBe('');
    }
  });
});

describe('readings of one system and instant', () => {
  const at = (quantity: SensorQuantity, value: number): Neighbour => ({
    quantity,
    value,
    ...judge(quantity, value, { value }),
  });
  const together = (...readings: Neighbour[]) =>
    judgeTogether(readings).map(({ quality, reason }) => reason ?? quality);

  test('at exactly zero together are probes out of the water', () => {
    expect(together(at('oxygen', 0), at('oxygen-saturation', 0), at('ph', 0))).toEqual([
      'probes-out',
      'probes-out',
      'impossible',
    ]);
    expect(together(at('oxygen', 0), at('temperature', 25), at('oxygen-saturation', 0))).toEqual([
      'probes-out',
      'good',
      'probes-out',
    ]);
  });

  test('are what each is by itself when only one is zero, however often it is measured', () => {
    expect(together(at('oxygen', 0), at('oxygen', 0), at('ph', 8))).toEqual(['good', 'good', 'good']);
    expect(together(at('oxygen', 0), at('level', 0), at('leak', 0))).toEqual(['good', 'good', 'good']);
  });
});
