import type { Facility } from '#core/facility/facility';
import { SENSOR_QUANTITIES } from '#core/facility/system';
import type { Check } from '#core/rounds/check';
import { checksOf, sheetOf } from '#core/rounds/sheet';
import { ASPECTS } from '#core/rounds/slot';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { anyFacility } from '../../_support/any-facility';
import { facility } from '../../_support/build-facility';
import { safeguard, sensor, stock, system, tank } from '../../_support/build-system';

const DAY = '2026-06-01';
const everything = { sees: [...ASPECTS] };
const named = (checks: Check[], noun: string) =>
  new Set(checks.filter(({ about }) => about.noun === noun).map(({ about }) => `${about.system}/${about.key}`));
const keysOf = (given: Facility, part: 'equipment' | 'sensors' | 'stock' | 'tanks') =>
  new Set(given.systems.flatMap((one) => one[part].map(({ key }) => `${one.key}/${key}`)));

describe('the sheet of a round', () => {
  test('has a line for every piece of equipment, sensor, animal and tank, and for nothing that is not there', () => {
    fc.assert(
      fc.property(anyFacility(), (given) => {
        const checks = checksOf(sheetOf(given, everything, DAY));
        expect(named(checks, 'equipment')).toEqual(keysOf(given, 'equipment'));
        expect(named(checks, 'sensor')).toEqual(keysOf(given, 'sensors'));
        expect(named(checks, 'stock')).toEqual(keysOf(given, 'stock'));
        expect(named(checks, 'tank')).toEqual(keysOf(given, 'tanks'));
        expect(new Set(checks.map(({ key }) => key)).size).toBe(checks.length);
      }),
      { numRuns: 60 },
    );
  });

  test('never leads from dirty water back to clean', () => {
    fc.assert(
      fc.property(anyFacility(), fc.subarray([...ASPECTS], { minLength: 1 }), (given, sees) => {
        const order = sheetOf(given, { sees }, DAY).places.map(({ cleanness }) => cleanness);
        expect(order).toEqual([...order].sort((a, b) => a - b));
      }),
      { numRuns: 60 },
    );
  });

  test('asks for the test of every safeguard that has not shown it works, or has to by that day, and of no other', () => {
    const due = {
      ...safeguard({ key: 'due', testEveryDays: 30 }),
      tests: [{ on: '2026-05-02', result: 'worked' as const }],
    };
    const fresh = { ...due, key: 'fresh', tests: [{ on: '2026-05-03', result: 'worked' as const }] };
    const failed = { ...due, key: 'failed', tests: [{ on: '2026-05-31', result: 'failed' as const }] };
    const never = { ...due, key: 'never', tests: [] };
    const off = {
      ...never,
      key: 'off',
      off: { by: 'Sam', why: 'new probe', since: '2026-05-30', until: '2026-06-02' },
    };
    const given = facility({ systems: [system({ safeguards: [due, fresh, failed, never, off] })], safeguards: [] });
    const asked = (day: string) =>
      checksOf(sheetOf(given, everything, day)).flatMap((check) => (check.kind === 'test' ? check.about.key : []));
    expect(asked(DAY)).toEqual(['due', 'failed', 'never']);
    expect(asked('2026-06-02')).toEqual(['due', 'fresh', 'failed', 'never']);
    expect(asked('2026-06-03')).toContain('off');
    expect(checksOf(sheetOf(given, { sees: ['animals'] }, DAY)).map(({ kind }) => kind)).not.toContain('test');
  });

  test('shows what a round sees and no more', () => {
    const given = facility();
    const kinds = (sees: (typeof ASPECTS)[number]) =>
      new Set(checksOf(sheetOf(given, { sees: [sees] }, DAY)).map(({ about }) => about.noun));
    expect(kinds('temperature')).toEqual(new Set(['sensor']));
    expect(kinds('animals')).toEqual(new Set(['stock', 'tank']));
    expect(kinds('floor')).toContain('system');
    const each = ASPECTS.flatMap((one) => checksOf(sheetOf(given, { sees: [one] }, DAY)).map(({ key }) => key));
    expect(each.sort()).toEqual(
      checksOf(sheetOf(given, everything, DAY))
        .map(({ key }) => key)
        .sort(),
    );
  });

  test('walks the systems it is for; what belongs to the site is seen by a round that passes all of them', () => {
    const given = facility({ systems: [system(), system({ key: 'other', name: 'Other' })] });
    const places = sheetOf(given, { ...everything, systems: ['other'] }, DAY).places;
    expect(new Set(places.map((place) => place.system?.key))).toEqual(new Set(['other']));
    expect(sheetOf(given, everything, DAY).places[0]?.system).toBeNull();
  });

  test('a quarantine tank makes its whole system one to be walked last, a nursery alone first', () => {
    const sick = system({ key: 'sick', tanks: [tank(), tank({ key: 'q', name: 'Q', role: 'quarantine' })] });
    const young = system({ key: 'young', tanks: [tank({ role: 'nursery' })] });
    const given = facility({ systems: [sick, system({ key: 'fish', kind: 'fish-only-marine' }), young] });
    const order = sheetOf(given, everything, DAY).places.map((place) => place.system?.key ?? '-');
    expect([...new Set(order)]).toEqual(['-', 'young', 'fish', 'sick']);
  });

  test('a number has the limits of the alarms that it would meet first', () => {
    const on = (bounds: object) => ({ kind: 'sensor' as const, sensor: 't', ...bounds });
    const alarm = { name: 'A', delayS: 0, deadBand: 0, answeredBy: 'rota' as const };
    const one = system({
      sensors: [sensor({ key: 't', quantity: 'temperature' })],
      alarms: [
        { ...alarm, key: 'a', on: on({ above: 28 }) },
        { ...alarm, key: 'b', on: on({ above: 27, below: 22 }) },
        { ...alarm, key: 'c', on: on({ below: 20 }) },
      ],
    });
    const [check] = checksOf(sheetOf(facility({ systems: [one] }), { sees: ['temperature'] }, DAY));
    expect(check).toMatchObject({ kind: 'number', alarm: { above: 27, below: 22 } });
  });

  test('every quantity that can be measured is read on some round', () => {
    for (const quantity of SENSOR_QUANTITIES) {
      const one = system({ stock: [stock()], sensors: [sensor({ key: 'x', quantity })] });
      const keys = checksOf(sheetOf(facility({ systems: [one] }), everything, DAY)).map(({ key }) => key);
      expect(keys, quantity).toContain(`${one.key}/sensor/x`);
    }
  });
});
