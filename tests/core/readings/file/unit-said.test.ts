import { SENSOR_QUANTITIES } from '#core/facility/system';
import { fileUnits, unitOf } from '#core/readings/file/unit-said';
import { toFacilityUnit } from '#core/readings/units';
import { describe, expect, test } from 'vitest';

describe('a unit in which a file may write a quantity', () => {
  test.each(SENSOR_QUANTITIES)('%s: can be put in the unit of the facility file', (quantity) => {
    const units = fileUnits(quantity);
    expect(units.length).toBeGreaterThan(0);
    for (const { unit } of units) expect([unit, toFacilityUnit(quantity, 1, unit).ok]).toEqual([unit, true]);
    expect(new Set(units.map(({ unit }) => unit)).size).toBe(units.length);
  });

  test('is known by what stands in brackets, after a comma or at the end of a name', () => {
    expect(unitOf('temperature', 'WaterTemp (°F)')).toBe('°F');
    expect(unitOf('temperature', 'WaterTemp, °C (serial 7)')).toBe('°C');
    expect(unitOf('oxygen', 'DO mg/L')).toBe('mg/L');
    expect(unitOf('oxygen', 'DO')).toBeNull();
  });
});
