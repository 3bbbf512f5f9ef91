/**
 * What it knows: which alarm explains which other, by what the site's description says depends on what: a circuit and
 * all that hangs on it, a gateway and the sensors it carries, a piece of equipment and what it keeps right.
 * What it leaves out: whether it is really so. What is explained stands under its first cause and is never hidden.
 * Where it comes from: the ways of failing that the catalogue of faults describes.
 */
import type { Facility } from '../../facility/facility';
import type { Circuit } from '../../facility/site';
import type { Equipment, EquipmentType, SensorQuantity, System } from '../../facility/system';
import { type AlarmDefinition, sensorsNamed } from '../definition';
import { isNeverSuppressed } from '../life/suppression';

/** An alarm where it is defined. */
export interface Placed {
  system: System;
  alarm: AlarmDefinition;
}

/** What readings go astray when equipment of a type does not do its work. What is never folded stands in none of them. */
const KEEPS: Readonly<Partial<Record<EquipmentType, readonly SensorQuantity[]>>> = {
  'return-pump': ['flow', 'level', 'temperature', 'pressure', 'salinity'],
  'circulation-pump': ['flow'],
  filter: ['flow', 'pressure', 'ammonia', 'nitrite', 'turbidity'],
  heater: ['temperature'],
  'top-off': ['level', 'salinity', 'conductivity'],
  supply: ['level', 'salinity', 'conductivity', 'flow'],
  'drain-valve': ['level', 'flow'],
  doser: ['ph', 'alkalinity'],
  co2: ['ph', 'carbon-dioxide', 'alkalinity'],
  skimmer: ['level', 'turbidity'],
};

/** What readings go astray when another reading does. */
const FOLLOWS: Readonly<Partial<Record<SensorQuantity, readonly SensorQuantity[]>>> = {
  flow: ['level', 'temperature', 'pressure', 'salinity'],
  leak: ['level', 'flow', 'salinity'],
  level: ['flow', 'pressure'],
};

/** Whether one alarm explains another, so that the other is folded under it. Never of one that is never suppressed. */
export function explains(facility: Facility, cause: Placed, effect: Placed): boolean {
  if (isNeverSuppressed(effect.system, effect.alarm)) return false;
  if (cause.system.key === effect.system.key && cause.alarm.key === effect.alarm.key) return false;
  return (
    silences(cause, effect) ||
    sharesPower(facility, cause, effect) ||
    (cause.system.key === effect.system.key && (putsAstray(cause, effect) || leadsTo(cause, effect)))
  );
}

/** A gateway that is silent explains that its sensors are. */
function silences({ alarm: { on } }: Placed, effect: Placed): boolean {
  if (on.kind !== 'silent' || effect.alarm.on.kind !== 'silent-sensor') return false;
  const named = sensorsNamed(effect.alarm.on);
  return effect.system.sensors.some(({ key, gateway }) => named.includes(key) && gateway === on.gateway);
}

/** What hangs on one circuit, or behind one RCD, loses its power together; a gateway hangs on one as well. */
function sharesPower(facility: Facility, cause: Placed, effect: Placed): boolean {
  const [one, other] = [circuitOf(facility, cause), circuitOf(facility, effect)];
  if (!(one && other)) return false;
  return one.key === other.key || (one.rcd !== undefined && one.rcd === other.rcd);
}

/** The circuit of what an alarm tells has stopped: equipment that draws wrongly, or a gateway that is silent. */
export function circuitOf(facility: Facility, { system, alarm: { on } }: Placed): Circuit | undefined {
  const key =
    on.kind === 'watts'
      ? system.equipment.find((one) => one.key === on.equipment)?.circuit
      : on.kind === 'silent'
        ? facility.monitors.find((one) => one.key === on.gateway)?.circuit
        : undefined;
  return key === undefined ? undefined : facility.circuits.find((one) => one.key === key);
}

/** Equipment that an alarm is about. */
export function equipmentOf({ system, alarm: { on } }: Placed): Equipment | undefined {
  if (on.kind !== 'watts' && on.kind !== 'run-limit') return undefined;
  return system.equipment.find(({ key }) => key === on.equipment);
}

/** Equipment that does not do its work explains the readings it keeps right. */
function putsAstray(cause: Placed, effect: Placed): boolean {
  const kept = KEEPS[equipmentOf(cause)?.type ?? 'other'] ?? [];
  return quantitiesOf(effect).some((quantity) => kept.includes(quantity));
}

/** Flow that is lost explains levels, and so on; a state that outstays its end explains what its plans switch. */
function leadsTo(cause: Placed, effect: Placed): boolean {
  const { on } = cause.alarm;
  if (on.kind === 'state-outstayed') {
    const switched = (piece: Equipment) => piece.plan.states.some(({ state }) => state === on.state);
    const own = equipmentOf(effect);
    if (own) return switched(own);
    const kept = cause.system.equipment.filter(switched).flatMap(({ type }) => KEEPS[type] ?? []);
    return quantitiesOf(effect).some((quantity) => kept.includes(quantity));
  }
  if (on.kind !== 'sensor') return false;
  const following = quantitiesOf(cause).flatMap((quantity) => FOLLOWS[quantity] ?? []);
  return quantitiesOf(effect).some((quantity) => following.includes(quantity));
}

/** What the readings tell that an alarm is held to; nothing of one that watches for silence. */
function quantitiesOf({ system, alarm: { on } }: Placed): SensorQuantity[] {
  if (on.kind === 'silent-sensor' || on.kind === 'frozen') return [];
  const named = sensorsNamed(on);
  return system.sensors.filter(({ key }) => named.includes(key)).map(({ quantity }) => quantity);
}
