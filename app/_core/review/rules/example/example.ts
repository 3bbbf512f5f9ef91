import type { Facility } from '../../../facility/facility';
import type { Equipment, OperatingState, System } from '../../../facility/system';
import type { Plan } from '../../../plans/plan';
import { contextOf } from '../../context';
import type { RuleContext } from '../rule';
import { entered, EXAMPLE_DAY } from './proven';
import { SITE } from './site';
import { SYSTEM } from './system';

/** A change of the example. */
export type Change = (facility: Facility) => Facility;

/** The example as a rule sees it, with changes made to it one after the other. Without any it passes every rule. */
export function example(...changes: Change[]): RuleContext {
  const facility = changes.reduce<Facility>((site, change) => change(site), { ...SITE, systems: [SYSTEM] });
  return contextOf(facility, facility.systems[0] ?? SYSTEM, EXAMPLE_DAY);
}

/** A list with fields of one of its members laid over; a field given as undefined is taken away. */
export function changed<T extends { key: string }>(list: readonly T[], key: string, given: Partial<T>): T[] {
  return list.map((one) => (one.key === key ? { ...one, ...given } : one));
}

/** The site with some of its fields replaced. */
export function withSite(change: (facility: Facility) => Partial<Facility>): Change {
  return (facility) => ({ ...facility, ...change(facility) });
}

/** The system with some of its fields replaced. */
export function withSystem(change: (system: System) => Partial<System>): Change {
  return (facility) => ({ ...facility, systems: facility.systems.map((system) => ({ ...system, ...change(system) })) });
}

/** One piece of equipment with some of its fields replaced. */
export function withEquipment(key: string, given: Partial<Equipment>): Change {
  return withSystem(({ equipment }) => ({ equipment: changed(equipment, key, given) }));
}

/** One piece of equipment with some layers of its plan replaced. */
export function withPlan(key: string, change: (plan: Plan) => Partial<Plan>): Change {
  return withSystem(({ equipment }) => ({
    equipment: equipment.map((one) => (one.key === key ? { ...one, plan: { ...one.plan, ...change(one.plan) } } : one)),
  }));
}

/** One more piece of equipment. */
export function withMore(more: Equipment): Change {
  return withSystem(({ equipment }) => ({ equipment: [...equipment, more] }));
}

/** The system with one more state in use, half an hour long and ended by a person. */
export function withState(name: OperatingState['name']): Change {
  return withSystem(({ states }) => ({ states: [...states, { name, lastsMin: entered(30), endsBy: 'person' }] }));
}

/** The system without some of its alarms. */
export function withoutAlarms(...keys: string[]): Change {
  return withSystem(({ alarms }) => ({ alarms: alarms.filter(({ key }) => !keys.includes(key)) }));
}
