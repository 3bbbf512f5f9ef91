import { describe, expect, test } from 'vitest';
import { SENSOR_QUANTITIES, type SensorQuantity } from '#core/facility/system';
import { toFacilityUnit, unitsOf } from '#core/readings/units';

describe('a value', () => {
  // Fixed points: the triple of scales by definition (SI Brochure 2.3.1), RFC 8428 12.1 and RFC 8798 table 2 for their units,
  // 53 mS/cm = 5.3 S/m, TEOS-10 for g/kg, a German degree as 0.357 mmol/L (rounded there), and a nitrate ion 4.4268 times its nitrogen.
  test.each<[SensorQuantity, number, string, number]>([
    ['temperature', 273.15, 'K', 0],
    ['temperature', 300, 'K', 26.85],
    ['temperature', 212, 'degF', 100],
    ['temperature', -40, '°F', -40],
    ['temperature', 85, 'F', 29.4444],
    ['level', -0.05, 'm', -50],
    ['level', 1, 'in', 25.4],
    ['flow', 0.5, 'l/s', 1800],
    ['flow', 1, 'm3/s', 3_600_000],
    ['flow', 600, 'galUS/h', 2271.247],
    ['salinity', 35.16504, 'g/kg', 35],
    ['oxygen', 0.0072, 'kg/m3', 7.2],
    ['oxygen', 225, 'umol/L', 7.2],
    ['watts', 0.3, 'kW', 300],
    ['oxygen-saturation', 0.953, '/', 95.3],
    ['conductivity', 5.3, 'S/m', 53],
    ['conductivity', 53_000, 'uS/cm', 53],
    ['redox', 0.35, 'V', 350],
    ['nitrate', 4.4268, 'mg/L NO3', 1],
    ['ammonia', 1.2158, 'mg/L NH3', 1],
    ['phosphate', 3.0661, 'mg/L PO4', 1],
    ['alkalinity', 7, 'dKH', 2.4966],
    ['alkalinity', 125, 'mg/L CaCO3', 2.4979],
    ['pressure', 1013.25, 'hPa', 101.325],
    ['pressure', 14.6959, 'psi', 101.325],
  ])('of %s, %s %s, is %s in the facility file’s unit', (quantity, value, unit, expected) => {
    const converted = toFacilityUnit(quantity, value, unit);
    expect(converted.ok && converted.value).toBeCloseTo(expected, 3);
  });

  test.each(SENSOR_QUANTITIES)('of %s stays as it is without a unit, and in the facility file’s own', (quantity) => {
    expect(toFacilityUnit(quantity, 7.3)).toEqual({ ok: true, value: 7.3 });
    expect(toFacilityUnit(quantity, 7.3, unitsOf(quantity)[0])).toEqual({ ok: true, value: 7.3 });
  });

  test('in a unit that cannot be one of its quantity is refused', () => {
    expect(toFacilityUnit('temperature', 20, 'lx')).toEqual({ ok: false, reason: { why: 'unknown-unit' } });
    expect(toFacilityUnit('temperature', 20, 'W')).toEqual({ ok: false, reason: { why: 'other-quantity' } });
    expect(toFacilityUnit('ph', 20, 'toString')).toEqual({ ok: false, reason: { why: 'unknown-unit' } });
    expect(toFacilityUnit('salinity', 1.0264, 'SG')).toEqual({ ok: false, reason: { why: 'unknown-unit' } });
  });
});
