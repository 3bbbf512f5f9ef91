import type { Facility } from '#core/facility/facility';
import type { Safeguard } from '#core/plans/safeguard';
import { inputHash } from '#server/reviews/input-hash';
import { describe, expect, test } from 'vitest';
import { heater } from '../../_support/build-equipment';
import { facility, person, room, site } from '../../_support/build-facility';
import { sensor, system } from '../../_support/build-system';
import { withEquipment, withSensor, withSystem } from '../../_support/with-part';

const DAY = '2026-06-01';

function hash(given: Facility, on = DAY): string {
  const [first] = given.systems;
  if (!first) throw new Error('no system');
  return inputHash(given, first, on);
}

const before = hash(facility());

function withSafeguard(change: (one: Safeguard) => Safeguard): Facility {
  return withSystem({ safeguards: system().safeguards.map((one, at) => (at === 0 ? change(one) : one)) });
}

describe('what a review depends on stays the same', () => {
  test.each<[string, Facility]>([
    ['when the site is called otherwise', facility({ site: site({ name: 'Elsewhere' }) })],
    ['when a person is called otherwise', facility({ people: [person({ name: 'X' }), ...facility().people.slice(1)] })],
    ['when a room it does not stand in changes', facility({ rooms: [...facility().rooms, room({ key: 'cellar' })] })],
    [
      'when the pump of another system changes',
      facility({ systems: [system(), system({ key: 'b', feedGPerDay: 1 })] }),
    ],
  ])('%s', (_what, given) => {
    const others = given.systems.length > 1 ? facility({ systems: [system(), system({ key: 'b' })] }) : facility();
    expect(hash(given)).toBe(hash(others));
  });

  test('when a heater of another system changes that hangs on none of its circuits', () => {
    const elsewhere = (ratedW: number) => system({ key: 'b', equipment: [heater({ circuit: 'elsewhere', ratedW })] });
    const with_ = (ratedW: number) => facility({ systems: [system(), elsewhere(ratedW)] });
    expect(hash(with_(150))).toBe(hash(with_(1500)));
  });

  test('from one day to the next', () => {
    expect(hash(facility(), '2026-06-02')).toBe(before);
  });

  test('whatever the order of the fields', () => {
    expect(hash(Object.fromEntries(Object.entries(facility()).reverse()) as unknown as Facility)).toBe(before);
  });
});

describe('what a review depends on is another', () => {
  test.each<[string, Facility]>([
    ['when a heater is another', withEquipment(heater({ ratedW: 151 }))],
    ['when the rota is another', facility({ shifts: facility().shifts.slice(1) })],
    [
      'when somebody lives farther away',
      facility({ people: [person({ travelMin: 26 }), ...facility().people.slice(1)] }),
    ],
    ['when its room is warmer', facility({ rooms: [room({ temperatureC: 22 })] })],
    ['when another system hangs on its circuits', facility({ systems: [system(), system({ key: 'b' })] })],
    [
      'when a safeguard was tested since',
      withSafeguard((one) => ({ ...one, tests: [...one.tests, { on: '2026-05-01', result: 'worked' }] })),
    ],
    ['when a test failed', withSafeguard((one) => ({ ...one, tests: [{ on: '2026-03-02', result: 'failed' }] }))],
    [
      'when a safeguard is off',
      withSafeguard((one) => ({ ...one, off: { by: 'x', why: 'y', since: DAY, until: DAY } })),
    ],
  ])('%s', (_what, given) => {
    expect(hash(given)).not.toBe(before);
  });

  test('when a test that no longer counts failed instead of having worked', () => {
    const ended = (result: 'worked' | 'failed') =>
      withSafeguard((one) => ({ ...one, tests: [{ on: '2025-01-01', result }] }));
    expect(hash(ended('failed'))).not.toBe(hash(ended('worked')));
  });

  test('on the day after the last on which a test counts, and not on that day', () => {
    // Tested on 2 March, to be tested every 180 days.
    expect(hash(facility(), '2026-08-29')).toBe(before);
    expect(hash(facility(), '2026-08-30')).not.toBe(before);
  });

  test('on the first day on which a safeguard is off, and on the first on which it no longer is', () => {
    const off = { by: 'x', why: 'y', since: '2026-06-03', until: '2026-06-04' };
    const given = withSafeguard((one) => ({ ...one, off }));
    const days = ['2026-06-02', '2026-06-03', '2026-06-04', '2026-06-05'].map((day) => hash(given, day));
    expect(days.map((one) => one === days[0])).toEqual([true, false, false, true]);
  });

  test('on the day a calibration is due, and on every day from then on, which a finding counts', () => {
    const given = withSensor(sensor({ calibrationDue: '2026-06-03' }));
    const days = ['2026-06-01', '2026-06-02', '2026-06-03', '2026-06-04', '2026-06-05'].map((day) => hash(given, day));
    expect(days[1]).toBe(days[0]);
    expect(new Set(days).size).toBe(4);
  });
});
