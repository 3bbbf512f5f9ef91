import type { Facility } from '#core/facility/facility';
import type { SensorQuantity, System } from '#core/facility/system';

/** What things are called, by key. A key that names nothing stands for itself. */
export interface Names {
  tank: (key: string) => string;
  equipment: (key: string) => string;
  sensor: (key: string) => string;
  alarm: (key: string) => string;
  round: (key: string) => string;
  safeguard: (key: string) => string;
  circuit: (key: string) => string;
  person: (key: string) => string;
  /** What a sensor measures; undefined for one that is not known. */
  measures: (sensor: string) => SensorQuantity | undefined;
}

/** The names in use in one system of a site. */
export function namesOf(facility: Facility, system: System): Names {
  const safeguards = [...system.safeguards, ...facility.safeguards];
  return {
    tank: finder(system.tanks),
    equipment: finder(system.equipment),
    sensor: finder(system.sensors),
    alarm: finder(system.alarms),
    round: finder(facility.rounds),
    safeguard: finder(safeguards),
    circuit: finder(facility.circuits),
    person: finder(facility.people),
    measures: (key) => system.sensors.find((sensor) => sensor.key === key)?.quantity,
  };
}

function finder(list: { key: string; name: string }[]): (key: string) => string {
  const names = new Map(list.map(({ key, name }) => [key, name]));
  return (key) => names.get(key) ?? key;
}
