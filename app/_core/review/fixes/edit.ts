import type { AlarmDefinition } from '../../alarms/definition';
import type { Facility } from '../../facility/facility';
import type { Figure } from '../../facility/figure';
import type { Circuit } from '../../facility/site';
import type { Equipment, EquipmentType, Sensor, SensorQuantity, System, Tank } from '../../facility/system';
import type { Interlock, Plan } from '../../plans/plan';
import type { Place } from './remedy';

/** Stands for the safeguard of a line that is only proposed. */
export const PROPOSED = 'proposed';
/** s that a proposed alarm waits. Common practice, no source. */
const DELAY_S = 120;

/** A figure that a proposal sets. */
export function proposed(value: number): Figure {
  return { value, origin: 'entered', source: 'proposed by the review' };
}

/** The site with another description of one of its systems. */
export function withSystem(facility: Facility, system: System): Facility {
  return { ...facility, systems: facility.systems.map((one) => (one.key === system.key ? system : one)) };
}

/** The site with one piece of equipment changed. */
export function withEquipment(
  facility: Facility,
  system: System,
  key: string,
  change: (e: Equipment) => Equipment | Equipment[],
): Facility {
  const equipment = system.equipment.flatMap((e) => (e.key === key ? change(e) : [e]));
  return withSystem(facility, { ...system, equipment });
}

/** The site with one plan changed. */
export function withPlan(
  facility: Facility,
  system: System,
  key: string,
  change: (plan: Plan) => Partial<Plan>,
): Facility {
  return withEquipment(facility, system, key, (e) => ({ ...e, plan: { ...e.plan, ...change(e.plan) } }));
}

/** The site with one more interlock on a piece of equipment, by a sensor that is there or is fitted for it. */
export function withLock(facility: Facility, system: System, key: string, lock: Interlock, fitted?: Sensor): Facility {
  const more = fitted ? withSensor(system, fitted) : system;
  return withPlan(facility, more, key, ({ interlocks }) => ({ interlocks: [...interlocks, lock] }));
}

/** The system with one more sensor, unless another proposal has fitted it already. */
function withSensor(system: System, sensor: Sensor): System {
  const isThere = system.sensors.some(({ key }) => key === sensor.key);
  return isThere ? system : { ...system, sensors: [...system.sensors, sensor] };
}

/** The site with one tank changed. */
export function withTank(facility: Facility, system: System, key: string, change: (t: Tank) => Tank): Facility {
  return withSystem(facility, { ...system, tanks: system.tanks.map((t) => (t.key === key ? change(t) : t)) });
}

/** The site with some of its circuits changed. */
export function withCircuits(facility: Facility, change: (c: Circuit) => Circuit): Facility {
  return { ...facility, circuits: facility.circuits.map(change) };
}

/** A sensor that is proposed, on the gateway that the others of the system use. */
export function fittedSensor(system: System, quantity: SensorQuantity, at: Partial<Sensor>): Sensor {
  const gateway = system.sensors.find((s) => s.gateway !== undefined)?.gateway;
  const where = at.tank ?? at.equipment ?? 'floor';
  const name = `Proposed ${quantity} sensor`;
  return {
    key: `${PROPOSED}-${quantity}-${where}`,
    name,
    quantity,
    ...at,
    ...(gateway === undefined ? {} : { gateway }),
  };
}

/** The site with an alarm more that the rota answers, on a sensor of its own. */
export function withAlarm(
  facility: Facility,
  system: System,
  sensor: Sensor,
  { key, ...on }: { key: string; above?: number; below?: number; watts?: string; deadBand: number },
): Facility {
  const { deadBand, watts, ...bounds } = on;
  const alarm: AlarmDefinition = {
    key: alarmKey(key),
    name: `Proposed alarm ${key}`,
    on: watts === undefined ? { kind: 'sensor', sensor: sensor.key, ...bounds } : { kind: 'watts', equipment: watts },
    delayS: DELAY_S,
    deadBand,
    answeredBy: 'rota',
  };
  return withSystem(facility, { ...withSensor(system, sensor), alarms: [...system.alarms, alarm] });
}

/** Key of the alarm that is proposed at a place. */
function alarmKey(key: string): string {
  return `${PROPOSED}-${key}`;
}

/** Every piece of equipment of a type for which something holds, as places. */
export function placesOf(
  { equipment }: System,
  type: EquipmentType,
  what: string,
  lacks: (e: Equipment) => boolean,
): Place[] {
  return equipment
    .filter((e) => e.type === type && lacks(e))
    .map(({ key, name }) => ({ key, title: `${what} ${name}` }));
}

/** Tanks with animals in them. */
export function stocked({ tanks, stock }: System): Tank[] {
  return tanks.filter(({ key }) => stock.some(({ tank }) => tank === key));
}

/** The sump, if there is one. */
export function sumpOf({ tanks }: System): Tank | undefined {
  return tanks.find(({ role }) => role === 'sump');
}

/** What gives a tank air or movement by itself. */
export function moversOf({ equipment }: System, tank: string): Equipment[] {
  return equipment.filter((e) =>
    e.type === 'air-blower'
      ? (e.stones ?? [{ tank: e.tank }]).some((s) => s.tank === tank)
      : (e.type === 'circulation-pump' || e.type === 'skimmer') && e.tank === tank,
  );
}

/** A circuit of the site that none of some equipment hangs on, behind another RCD; null when there is none. */
export function otherCircuit(facility: Facility, equipment: readonly Equipment[]): Circuit | null {
  const used = facility.circuits.filter(({ key }) => equipment.some((e) => e.circuit === key));
  const isApart = (c: Circuit) => used.every((one) => one.key !== c.key && (c.rcd === undefined || one.rcd !== c.rcd));
  const free = facility.circuits.filter(isApart);
  return free.find(({ backedBy }) => backedBy.length > 0) ?? free[0] ?? null;
}

/** Middle of the band that a plan keeps, °C; null where it keeps none. */
export function bandOf({ plan: { regulation } }: Equipment): { lowC: number; highC: number } | null {
  return regulation.kind === 'thermostat' ? regulation : null;
}

/** Whether an alarm that somebody answers watches a quantity of a tank on a side. */
export function alarmedOn(
  { sensors, alarms }: System,
  quantity: SensorQuantity,
  tank: string,
  side: 'above' | 'below',
): boolean {
  const probes = sensors.filter((s) => s.quantity === quantity && s.tank === tank).map(({ key }) => key);
  return alarms.some(
    ({ on, answeredBy }) =>
      answeredBy !== 'nobody' && on.kind === 'sensor' && probes.includes(on.sensor) && on[side] !== undefined,
  );
}
