import type { AlarmDefinition } from '#core/alarms/definition';
import type { Facility } from '#core/facility/facility';
import type { Equipment, Sensor, System, Tank } from '#core/facility/system';
import { facility } from './build-facility';
import { system } from './build-system';
import type { Given } from './given';

/** The base facility with this said about its system. */
export function withSystem(given: Given<System>): Facility {
  return facility({ systems: [system(given)] });
}

/** The base facility with this equipment in the place of the one with its key, or added last. */
export function withEquipment(...items: Equipment[]): Facility {
  return withSystem({ equipment: laidOver(system().equipment, items) });
}

/** The base facility with these tanks in the place of those with their keys, or added last. */
export function withTank(...tanks: Tank[]): Facility {
  return withSystem({ tanks: laidOver(system().tanks, tanks) });
}

/** The base facility with these sensors in the place of those with their keys, or added last. */
export function withSensor(...sensors: Sensor[]): Facility {
  return withSystem({ sensors: laidOver(system().sensors, sensors) });
}

/** The base facility with these alarms in the place of those with their keys, or added last. */
export function withAlarm(...alarms: AlarmDefinition[]): Facility {
  return withSystem({ alarms: laidOver(system().alarms, alarms) });
}

function laidOver<T extends { key: string }>(base: readonly T[], over: readonly T[]): T[] {
  const kept = base.map((one) => over.find(({ key }) => key === one.key) ?? one);
  return [...kept, ...over.filter(({ key }) => !base.some((one) => one.key === key))];
}
