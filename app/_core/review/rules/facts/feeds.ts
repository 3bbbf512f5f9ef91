import type { Circuit } from '../../../facility/site';
import type { Equipment, EquipmentType } from '../../../facility/system';
import type { RuleContext } from '../rule';

/** What is named on the way from the utility to a piece of equipment, and goes dead as one. */
export interface Feed {
  kind: 'RCD group' | 'circuit';
  name: string;
}

/** The circuit of this key; undefined when none is named or it is not described. */
export function circuitOf({ facility }: RuleContext, key: string | undefined): Circuit | undefined {
  return facility.circuits.find((circuit) => circuit.key === key);
}

/** What goes dead together with a circuit: its RCD group, else the circuit itself. */
export function feedOf(circuit: Circuit): Feed {
  return circuit.rcd === undefined ? { kind: 'circuit', name: circuit.name } : { kind: 'RCD group', name: circuit.rcd };
}

/** Whether two circuits go dead together. */
export function failTogether(a: Circuit, b: Circuit): boolean {
  return a.key === b.key || (a.rcd !== undefined && a.rcd === b.rcd);
}

/**
 * The one feed that all of several pieces of equipment hang on; null when there are two, or one of them is not known.
 */
export function oneFeed(context: RuleContext, equipment: readonly Equipment[]): Feed | null {
  const circuits = equipment.map((one) => circuitOf(context, one.circuit));
  const [first] = circuits;
  if (first === undefined) return null;
  return circuits.every((one) => one !== undefined && failTogether(one, first)) ? feedOf(first) : null;
}

const MOVERS: readonly EquipmentType[] = ['return-pump', 'circulation-pump', 'air-blower', 'skimmer'];

/** Equipment that brings oxygen to the water or moves it, less what runs only when a person starts it. */
export function moversOf({ system }: RuleContext): Equipment[] {
  return system.equipment.filter(({ type, plan }) => MOVERS.includes(type) && plan.regulation.kind !== 'never');
}

/** Whether everything that brings air or movement, two pieces or more, hangs on one feed; that feed, else null. */
export function feedOfAllMovers(context: RuleContext): Feed | null {
  const movers = moversOf(context);
  return movers.length < 2 ? null : oneFeed(context, movers);
}
