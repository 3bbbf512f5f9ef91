import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { calibrationDueOf, overdueCalibrations, withCalibrations } from '#core/rounds/calibrated';
import { addDays } from '#core/time/add-days';
import { facility } from '../../_support/build-facility';
import { sensor, system } from '../../_support/build-system';

const PH = { quantity: 'ph' as const };
const LAST = { on: '2026-06-01', fit: true };

describe('until when a calibration counts', () => {
  test('goes by the last one on a round and the days that are described, or a month for what fouls, a quarter for a thermometer', () => {
    expect(calibrationDueOf({ ...PH, calibrateEveryDays: 14 }, LAST)).toBe('2026-06-15');
    expect(calibrationDueOf({ ...PH, calibrationDue: '2026-05-20' }, LAST)).toBe('2026-07-01');
    expect(calibrationDueOf({ quantity: 'temperature', calibrationDue: '2026-05-20' }, LAST)).toBe('2026-08-31');
  });

  test('is as described where none was made, later where the description knows of a later one, and unsaid where nobody said', () => {
    expect(calibrationDueOf({ ...PH, calibrationDue: '2026-05-20' }, null)).toBe('2026-05-20');
    expect(calibrationDueOf({ ...PH, calibrationDue: '2027-01-31' }, LAST)).toBe('2027-01-31');
    expect(calibrationDueOf(PH, LAST)).toBeUndefined();
    // Nothing is known of how long a pressure gauge counts.
    expect(calibrationDueOf({ quantity: 'pressure', calibrationDue: '2026-05-20' }, LAST)).toBe('2026-05-20');
  });

  test('is over at once for an instrument that was found unfit, and is never brought forward by one that is fit', () => {
    const day = fc.integer({ min: -400, max: 400 }).map((days) => addDays('2026-06-01', days));
    const described = fc.record({
      quantity: fc.constantFrom('ph' as const, 'temperature' as const, 'level' as const),
      calibrationDue: fc.option(day, { nil: undefined }),
      calibrateEveryDays: fc.option(fc.integer({ min: 1, max: 400 }), { nil: undefined }),
    });
    fc.assert(
      fc.property(described, day, (given, on) => {
        const { calibrationDue, ...rest } = given;
        const probe = calibrationDue === undefined ? rest : { ...rest, calibrationDue };
        const fit = calibrationDueOf(probe, { on, fit: true });
        if (calibrationDue !== undefined) expect(fit !== undefined && fit >= calibrationDue).toBe(true);
        expect((calibrationDueOf(probe, { on, fit: false }) ?? '') < on).toBe(true);
      }),
    );
  });
});

test('what is overdue, and what a site is judged by, follow from the lines of rounds', () => {
  const probe = sensor({ key: 'ph', name: 'pH', quantity: 'ph', calibrationDue: '2026-05-20' });
  const site = facility({ systems: [system({ key: 'reef', name: 'Reef', sensors: [probe] })] });
  expect(overdueCalibrations(site, '2026-05-20')).toEqual([]);
  expect(overdueCalibrations(site, '2026-05-21')).toEqual([{ sensor: 'pH', system: 'Reef', due: '2026-05-20' }]);
  const judged = withCalibrations(site, new Map([['reef/sensor/ph/calibration', LAST]]));
  expect(overdueCalibrations(judged, '2026-07-01')).toEqual([]);
  expect(overdueCalibrations(judged, '2026-07-02')).toEqual([{ sensor: 'pH', system: 'Reef', due: '2026-07-01' }]);
  expect(withCalibrations(site, new Map([['other/sensor/ph/calibration', LAST]]))).toEqual(site);
});
