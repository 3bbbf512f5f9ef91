import type { Facility } from '../facility/facility';
import type { PaperKind } from '../facility/paper';
import type { Equipment, EquipmentType, SensorQuantity, StateName, System, Tank } from '../facility/system';
import type { Aspect } from '../rounds/slot';
import type { CaseThing } from '../review/result';
import type { Upset } from './upset';

/** What the work of putting it right is named after in the default times, or the equipment's own time. */
export type RepairKind =
  | 'equipment'
  | 'circuit'
  | 'overflow'
  | 'plumbing'
  | 'water'
  | 'room'
  | 'sensor'
  | 'state'
  | 'utility'
  | 'monitor';

/** One failure mode: a named, documented change of the machine or of a signal. */
export interface Fault {
  /** The file's name. */
  id: string;
  /** Its row in the catalogue of the trade; the letters say what it belongs to (`rows.json`). */
  row: string;
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
  /**
   * The failure mode whose water is the same: people look for this one by its own name, but where the other befalls the same
   * thing in the same state, the one case stands for both.
   */
  sameAs?: string;
  /** What it can befall in a system. */
  things: (facility: Facility, system: System) => CaseThing[];
  /** Make it so. */
  befall: (upset: Upset, thing: CaseThing, facility: Facility, system: System) => void;
}

/** A failure mode that the model cannot carry: it is named, and something else is asked for. */
export interface Uncarried {
  /** The file's name. */
  id: string;
  /** Its row in the catalogue of the trade. */
  row: string;
  title: string;
  effect: string;
  source: string;
  carried: false;
  /** Why the model cannot carry it, in a sentence. */
  why: string;
  /** A word for it in the list of what is not modelled; absent where a plan check says all there is to say. */
  hazard?: string;
  /** What the review asks for instead: a dated paper, or what a plan check looks at. Absent: the rounds show it in time. */
  asks?: { paper: PaperKind } | { rule: string };
  /** Whether it can befall a system. */
  concerns: (facility: Facility, system: System) => boolean;
}

/** Any entry of the catalogue. */
export type Mode = Fault | Uncarried;

/** Every piece of equipment of some types, as what a fault can befall. */
export function equipmentThings(system: System, ...types: EquipmentType[]): CaseThing[] {
  return thingsWhere(system, (e) => types.includes(e.type));
}

/** Every piece of equipment for which something holds, as what a fault can befall. */
export function thingsWhere(system: System, is: (equipment: Equipment) => boolean): CaseThing[] {
  return system.equipment.filter(is).map(({ key, name }) => ({ kind: 'equipment', key, name }));
}

/** Every tank for which something holds, as what a fault can befall. */
export function tankThings(system: System, is: (tank: Tank) => boolean): CaseThing[] {
  return system.tanks.filter(is).map(({ key, name }) => ({ kind: 'tank', key, name }));
}

/** Whether equipment of some type is there. */
export function has(system: System, ...types: EquipmentType[]): boolean {
  return system.equipment.some((e) => types.includes(e.type));
}

/** Sensors that some equipment's temperature is regulated by. */
export function regulatingProbes(system: System): CaseThing[] {
  const used = new Set(
    system.equipment.flatMap(({ plan }) => (plan.regulation.kind === 'thermostat' ? plan.regulation.sensors : [])),
  );
  return system.sensors.filter((s) => used.has(s.key)).map(({ key, name }) => ({ kind: 'sensor', key, name }));
}

/** Sensors of some quantities that an alarm or an interlock listens to, and that regulate nothing. */
export function watchingSensors(system: System, ...quantities: SensorQuantity[]): CaseThing[] {
  const heard = new Set([
    ...system.alarms.flatMap(({ on }) => (on.kind === 'sensor' ? [on.sensor] : [])),
    ...system.equipment.flatMap(({ plan }) =>
      plan.interlocks.flatMap(({ when }) => (when.kind === 'sensor' ? [when.sensor] : [])),
    ),
  ]);
  const regulates = new Set(
    system.equipment.flatMap(({ plan: { regulation } }) => (regulation.kind === 'level' ? [regulation.sensor] : [])),
  );
  return system.sensors
    .filter(({ key, quantity }) => quantities.includes(quantity) && heard.has(key) && !regulates.has(key))
    .map(({ key, name }) => ({ kind: 'sensor', key, name }));
}

/** A state in use, as what a fault can befall. */
export function stateThings(system: System, ...names: StateName[]): CaseThing[] {
  return system.states
    .filter(({ name }) => names.includes(name))
    .map(({ name }) => ({ kind: 'state', key: name, name: name.replace('-', ' ') }));
}

/** Circuits that feed a system's equipment, or something its alarms travel through. */
export function circuitsOf(facility: Facility, system: System): Facility['circuits'] {
  const used = new Set<string | undefined>([
    ...system.equipment.map((e) => e.circuit),
    ...facility.monitors.map((m) => m.circuit),
  ]);
  return facility.circuits.filter((c) => used.has(c.key));
}

/** The room of a system, as what a fault can befall. */
export function roomThings(facility: Facility, system: System): CaseThing[] {
  return facility.rooms.filter((r) => r.key === system.room).map(({ key, name }) => ({ kind: 'room', key, name }));
}

/** Whether equipment of a type draws from a reservoir. */
export function feeds(system: System, reservoir: string, type: EquipmentType): boolean {
  return system.equipment.some((e) => e.type === type && e.source === reservoir);
}

/** pH probes that something which doses listens to. */
export function phProbes(system: System): CaseThing[] {
  const heard = new Set(
    system.equipment
      .filter((e) => e.type === 'co2' || e.type === 'doser')
      .flatMap(({ plan }) => plan.interlocks.flatMap(({ when }) => (when.kind === 'sensor' ? [when.sensor] : []))),
  );
  return system.sensors
    .filter((s) => s.quantity === 'ph' && heard.has(s.key))
    .map(({ key, name }) => ({ kind: 'sensor', key, name }));
}

/** Whether water of the mains gets into a system. */
export function usesMains({ site }: Facility, system: System): boolean {
  return site.mains !== undefined || system.equipment.some((e) => e.source === 'mains' || e.type === 'dechlorinator');
}
