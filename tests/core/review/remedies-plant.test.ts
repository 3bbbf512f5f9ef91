import type { Facility } from '#core/facility/facility';
import type { Equipment } from '#core/facility/system';
import { type RemedyId, remedyFor } from '#core/review/remedies';
import type { CaseThing } from '#core/review/result';
import { expect, test } from 'vitest';
import { offWithoutReturn, plan } from '../../_support/build-equipment';
import { facility, round } from '../../_support/build-facility';
import { alarm, safeguard, sensor, system, tank } from '../../_support/build-system';
import { entered } from '../../_support/given';
import { withAlarm, withEquipment, withSystem } from '../../_support/with-part';
import { faultCase, judgement, outcome } from './build-outcome';
import { judging } from './trying';

const late = outcome({ putRightS: 36_000 });
const equipment = (key: string): CaseThing => ({ kind: 'equipment', key, name: key });
const proposed = (of: Facility, id: RemedyId, thing: CaseThing): string =>
  remedyFor(judging(of), faultCase(judgement([late]), { thing, remedies: [id] }), late);

const reef = system();
const more = (type: Equipment['type'], given: Partial<Equipment> = {}): Equipment => ({
  key: type,
  name: type,
  type,
  tank: 'sump',
  circuit: 'heat',
  plan: plan(),
  ...given,
});
const stops = (...sensors: string[]) =>
  plan({
    interlocks: sensors.map((key) => ({
      when: { kind: 'sensor', sensor: key, above: 9 },
      then: 'off',
      by: 'controller',
    })),
  });
const probe = (key: string, quantity: 'ph' | 'redox' | 'pressure' | 'level', at = 'sump') =>
  sensor({ key, name: key, quantity, tank: at });
const sensors = [
  ...reef.sensors,
  probe('ph-1', 'ph'),
  probe('ph-2', 'ph'),
  probe('redox-1', 'redox'),
  probe('redox-2', 'redox'),
  probe('air', 'pressure'),
  probe('in-reservoir', 'level', 'reservoir'),
];
const withPart = (part: Equipment) => withSystem({ sensors, equipment: [...reef.equipment, part] });
const watching = (key: string) =>
  withSystem({
    sensors,
    alarms: [...reef.alarms, alarm({ key: 'more', on: { kind: 'sensor', sensor: key, above: 9 } })],
  });
const unseen = facility({ rounds: [round({ sees: ['level'] })] });
const base = facility();
const place: CaseThing = { kind: 'site', key: 'harbour', name: 'Harbour' };

test.each<[RemedyId, CaseThing, Facility, Facility]>([
  [
    'battery-test',
    place,
    base,
    facility({ safeguards: [safeguard({ key: 'battery', kind: 'standby-power', tests: [] })] }),
  ],
  [
    'flow-interlock',
    equipment('uv'),
    withPart(more('uv', { plan: plan({ interlocks: [offWithoutReturn()] }) })),
    withPart(more('uv')),
  ],
  ['pressure-alarm', equipment('air-blower'), watching('air'), base],
  [
    'salinity-alarm',
    equipment('top-off'),
    withAlarm(alarm({ key: 'salt', on: { kind: 'sensor', sensor: 'sump-salinity', below: 33 } })),
    base,
  ],
  ['ph-alarm', equipment('skimmer'), watching('ph-1'), base],
  ['oxidant-alarm', equipment('skimmer'), watching('redox-1'), base],
  ['reservoir-alarm', equipment('top-off'), watching('in-reservoir'), base],
  ['lamp-check', equipment('skimmer'), base, unseen],
  ['oxygen-round', equipment('skimmer'), base, unseen],
  ['ph-stop', equipment('co2'), withPart(more('co2', { plan: stops('ph-1') })), withPart(more('co2'))],
  [
    'second-ph-probe',
    { kind: 'sensor', key: 'ph-1', name: 'pH' },
    withPart(more('co2', { plan: stops('ph-1', 'ph-2') })),
    withPart(more('co2', { plan: stops('ph-1') })),
  ],
  [
    'ozone-two-probes',
    equipment('ozone'),
    withPart(more('ozone', { plan: stops('redox-1', 'redox-2') })),
    withPart(more('ozone', { plan: stops('redox-1') })),
  ],
  ['day-tank', equipment('top-off'), base, withPart(more('top-off', { key: 'top-off', source: 'mains' }))],
  [
    'small-hopper',
    equipment('feeder'),
    withPart(more('feeder', { hopperG: entered(20) })),
    withPart(more('feeder', { hopperG: entered(200) })),
  ],
  [
    'second-filter',
    equipment('filter'),
    withEquipment(more('filter'), more('filter', { key: 'filter-2' })),
    withEquipment(more('filter')),
  ],
  [
    'second-supply',
    equipment('supply'),
    withEquipment(more('supply'), more('supply', { key: 'supply-2' })),
    withEquipment(more('supply')),
  ],
  [
    'second-dechlorinator',
    equipment('dechlorinator'),
    withEquipment(more('dechlorinator'), more('dechlorinator', { key: 'second', circuit: 'pumps' })),
    withEquipment(more('dechlorinator'), more('dechlorinator', { key: 'second' })),
  ],
  [
    'siphon-break',
    equipment('return-pump'),
    base,
    withSystem({ tanks: [tank({ siphonBreakMm: undefined, siphonSafeguard: undefined }), ...reef.tanks.slice(1)] }),
  ],
  ['calibrate', equipment('skimmer'), base, withSystem({ sensors: [sensor({ calibrationDue: '2026-05-01' })] })],
  [
    'state-timer',
    { kind: 'state', key: 'water-change', name: 'water change' },
    withSystem({ states: [{ name: 'water-change', endsBy: 'controller', endSafeguard: 'feeding-end' }] }),
    base,
  ],
])('%s is not proposed where it is in place, and is where it is not', (id, thing, there, absent) => {
  expect(proposed(there, id, thing)).not.toBe(id);
  expect(proposed(absent, id, thing)).toBe(id);
});
