import type { Facility } from '../facility/facility';
import type { Equipment, EquipmentType, StateName, System } from '../facility/system';
import type { Aspect } from '../rounds/slot';
import type { CaseThing } from '../review/result';
import type { Upset } from './upset';

/** What the work of putting it right is named after in the default times, or the equipment's own time. */
export type RepairKind = 'equipment' | 'circuit' | 'overflow' | 'sensor' | 'state' | 'utility' | 'monitor';

/** One failure mode: a named, documented change of the machine or of a signal. */
export interface Fault {
  /** The file's name. */
  id: string;
  title: string;
  /** What it does to the water and then to the animals, in one or two sentences. */
  effect: string;
  /** Where it is known from. */
  source: string;
  /** Which harms it leads to: overheating and suffocation, cooling and salting, or either. */
  threatens: 'warm' | 'cold' | 'either';
  /** Aspects of a round on which it shows at once, whatever the water does. */
  shows: readonly Aspect[];
  repair: RepairKind;
  /** `running`: in normal running and in every other state in use; or only in the states named. */
  states: 'running' | readonly StateName[];
  /** Remedies that would answer it, most direct first (ids of `review/remedies.json`). */
  remedies: readonly string[];
  /** What it can befall in a system. */
  things: (facility: Facility, system: System) => CaseThing[];
  /** Make it so. */
  befall: (upset: Upset, thing: CaseThing, facility: Facility, system: System) => void;
}

/** Every piece of equipment of some types, as what a fault can befall. */
export function equipmentThings(system: System, ...types: EquipmentType[]): CaseThing[] {
  return system.equipment.filter((e) => types.includes(e.type)).map(equipmentThing);
}

/** One piece of equipment as what a fault can befall. */
function equipmentThing({ key, name }: Equipment): CaseThing {
  return { kind: 'equipment', key, name };
}

/** Sensors that some equipment's temperature is regulated by. */
export function regulatingProbes(system: System): CaseThing[] {
  const used = new Set(
    system.equipment.flatMap(({ plan }) => (plan.regulation.kind === 'thermostat' ? plan.regulation.sensors : [])),
  );
  return system.sensors.filter((s) => used.has(s.key)).map(({ key, name }) => ({ kind: 'sensor', key, name }));
}

/** Circuits that feed a system's equipment, or something its alarms travel through. */
export function circuitsOf(facility: Facility, system: System): Facility['circuits'] {
  const used = new Set<string | undefined>([
    ...system.equipment.map((e) => e.circuit),
    ...facility.monitors.map((m) => m.circuit),
  ]);
  return facility.circuits.filter((c) => used.has(c.key));
}
