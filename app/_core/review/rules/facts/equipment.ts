import type { CarriedOutBy } from '../../../facility/site';
import type { Equipment, EquipmentType, StateName } from '../../../facility/system';
import type { Interlock, Thermostat } from '../../../plans/plan';
import type { RuleContext } from '../rule';

/** The system's equipment of some types, in the order of the description. */
export function ofType({ system }: RuleContext, ...types: EquipmentType[]): Equipment[] {
  return system.equipment.filter((one) => types.includes(one.type));
}

/** Whether a line of a plan is carried out by a device: only then it is credited as automatic. */
export function byDevice(by: CarriedOutBy): boolean {
  return by !== 'person';
}

/** Whether a piece of equipment stands in the sump. */
export function inSump({ system }: RuleContext, { tank }: Equipment): boolean {
  return system.tanks.some((one) => one.key === tank && one.role === 'sump');
}

/** The two-point control of temperature a piece of equipment follows; null when it follows none. */
export function thermostatOf({ plan }: Equipment): Thermostat | null {
  return plan.regulation.kind === 'thermostat' ? plan.regulation : null;
}

/** Whether an interlock switches off when the return is lost or a level is wrong. */
export function watchesFlowOrLevel({ system }: RuleContext, { when, then }: Interlock): boolean {
  if (then !== 'off') return false;
  if (when.kind === 'return-lost') return true;
  const quantity = system.sensors.find(({ key }) => key === when.sensor)?.quantity;
  return quantity === 'flow' || quantity === 'level';
}

/** Whether a device, not a person, stops it when the return is lost or a level is wrong. */
export function stopsWithoutFlow(context: RuleContext, { plan }: Equipment): boolean {
  const wired = plan.cutOuts.some(({ quantity }) => quantity === 'level');
  return wired || plan.interlocks.some((line) => byDevice(line.by) && watchesFlowOrLevel(context, line));
}

/** Whether its plan has it off in a state. */
export function isOffIn({ plan }: Equipment, state: StateName): boolean {
  return plan.states.some((line) => line.state === state && line.then === 'off');
}

/** Whether it is off in a state, by its own line or because a device stops it with the return that is off then. */
export function stopsIn(context: RuleContext, equipment: Equipment, state: StateName): boolean {
  if (isOffIn(equipment, state)) return true;
  const pumps = ofType(context, 'return-pump');
  const still = pumps.length > 0 && pumps.every((pump) => isOffIn(pump, state));
  const follows = ({ when, then, by }: Interlock) => when.kind === 'return-lost' && then === 'off' && byDevice(by);
  return still && equipment.plan.interlocks.some(follows);
}

/** Whether the system is ever put into a state. */
export function uses({ system }: RuleContext, state: StateName): boolean {
  return system.states.some(({ name }) => name === state);
}
