import type { AlarmDefinition } from '#core/alarms/definition';
import type { Facility } from '#core/facility/facility';
import type { Circuit, Monitor, Room, Site } from '#core/facility/site';
import type { Stock, ToleranceProfile } from '#core/facility/stock';
import type { Equipment, OperatingState, Sensor, System, Tank } from '#core/facility/system';
import type { Plan } from '#core/plans/plan';
import type { Safeguard } from '#core/plans/safeguard';
import type { Person, Shift } from '#core/rota/rota';
import type { RoundSheet } from '#core/rounds/round-sheet';
import type { RoundSlot } from '#core/rounds/slot';
import { alarmShape } from '#shape/facility/alarm';
import { circuitShape } from '#shape/facility/circuit';
import { equipmentShape } from '#shape/facility/equipment';
import { facilityShape } from '#shape/facility/facility';
import { monitorShape } from '#shape/facility/monitor';
import { operatingStateShape } from '#shape/facility/operating-state';
import { personShape } from '#shape/facility/person';
import { planShape } from '#shape/facility/plan';
import { roomShape } from '#shape/facility/room';
import { roundSheetShape } from '#shape/facility/round-sheet';
import { roundSlotShape } from '#shape/facility/round-slot';
import { safeguardShape } from '#shape/facility/safeguard';
import { sensorShape } from '#shape/facility/sensor';
import { shiftShape } from '#shape/facility/shift';
import { siteShape } from '#shape/facility/site';
import { stockShape } from '#shape/facility/stock';
import { systemShape } from '#shape/facility/system';
import { tankShape } from '#shape/facility/tank';
import { toleranceProfileShape } from '#shape/facility/tolerance-profile';
import { expect, test } from 'vitest';
import { z } from 'zod';
import { defaultProfile } from '#core/facility/profiles';
import { heater } from '../../_support/build-equipment';
import { circuit, facility, monitor, person, room, round, shift, site } from '../../_support/build-facility';
import { alarm, safeguard, sensor, stock, system, tank } from '../../_support/build-system';

/** The type with nothing optional, all the way down, so that a field one side lacks is seen. */
type Whole<T> = T extends object ? { [K in keyof T]-?: Whole<Exclude<T[K], undefined>> } : T;
type Same<A, B> = [Whole<A>] extends [Whole<B>] ? ([Whole<B>] extends [Whole<A>] ? true : false) : false;

/** A shape whose output is exactly this type of the core, and one value of it; the compiler refuses any other. */
function holds<T>() {
  return <S extends z.ZodType>(shape: Same<T, z.output<S>> extends true ? S : never, value: T) =>
    [shape as z.ZodType<unknown>, value] as const;
}

const SHEET: RoundSheet = {
  key: 'floor',
  name: 'Floor',
  schedule: { rule: 'FREQ=DAILY', from: '2026-01-01', times: [{ at: '08:00' }] },
  lines: [{ kind: 'described', key: 'reef/system/floor' }],
};

const NOUNS: [string, readonly [z.ZodType<unknown>, unknown]][] = [
  ['Facility', holds<Facility>()(facilityShape, facility())],
  ['Site', holds<Site>()(siteShape, site())],
  ['Room', holds<Room>()(roomShape, room())],
  ['Circuit', holds<Circuit>()(circuitShape, circuit())],
  ['Monitor', holds<Monitor>()(monitorShape, monitor())],
  ['Safeguard', holds<Safeguard>()(safeguardShape, safeguard({ key: 'a' }))],
  ['Person', holds<Person>()(personShape, person())],
  ['Shift', holds<Shift>()(shiftShape, shift())],
  ['RoundSlot', holds<RoundSlot>()(roundSlotShape, round())],
  ['RoundSheet', holds<RoundSheet>()(roundSheetShape, SHEET)],
  ['ToleranceProfile', holds<ToleranceProfile>()(toleranceProfileShape, defaultProfile('reef'))],
  ['System', holds<System>()(systemShape, system())],
  ['Tank', holds<Tank>()(tankShape, tank())],
  ['Equipment', holds<Equipment>()(equipmentShape, heater())],
  ['Plan', holds<Plan>()(planShape, heater().plan)],
  ['Sensor', holds<Sensor>()(sensorShape, sensor())],
  ['Stock', holds<Stock>()(stockShape, stock())],
  ['AlarmDefinition', holds<AlarmDefinition>()(alarmShape, alarm())],
  ['OperatingState', holds<OperatingState>()(operatingStateShape, { name: 'night', endsBy: 'person' })],
];

test.each(NOUNS)('a shape gives the core its %s, no more and no less, and takes it back', (_, [shape, value]) => {
  expect(z.decode(shape, z.encode(shape, value))).toEqual(value);
});
