import type { Equipment, EquipmentType, System } from '../facility/system';
import type { Begun } from './state-end';

/** What the states in force ask of one piece of equipment. */
export interface Asked {
  /** Key and name of the equipment. */
  key: string;
  name: string;
  then: 'on' | 'off';
  /** The states that ask so. */
  because: Begun[];
  /** States that ask the opposite, which gives way. */
  against: Begun[];
}

/**
 * What stays on when two states differ: animals breathe by it. Everything else goes off, as it is safe to be still for a while
 * and not to heat, dose or fill where another state forbids it. Trade consensus, no source; check locally.
 */
const ON_IS_SAFE: ReadonlySet<EquipmentType> = new Set(['air-blower', 'circulation-pump']);
/** Where hands or people are in the water, what was switched off for them stays off. */
const FOR_PEOPLE: ReadonlySet<Begun> = new Set(['hands-in', 'diving', 'ozone-work', 'maintenance']);

/**
 * What a system's states in force come to, per piece of equipment: the most protective of what they ask. People come first, then
 * what animals breathe by, then stillness.
 */
export function askedBy({ equipment }: Pick<System, 'equipment'>, states: readonly Begun[]): Asked[] {
  return equipment.flatMap((piece) => {
    const lines = piece.plan.states.filter(({ state }) => states.includes(state));
    if (lines.length === 0) return [];
    const of = (then: 'on' | 'off') => lines.flatMap((line) => (line.then === then ? [line.state] : []));
    const then = mostProtective(piece, of('off'), of('on'));
    const { key, name } = piece;
    return [{ key, name, then, because: of(then), against: of(then === 'on' ? 'off' : 'on') }];
  });
}

function mostProtective({ type }: Pick<Equipment, 'type'>, off: readonly Begun[], on: readonly Begun[]): 'on' | 'off' {
  if (off.some((state) => FOR_PEOPLE.has(state))) return 'off';
  if (on.length > 0 && ON_IS_SAFE.has(type)) return 'on';
  return off.length > 0 ? 'off' : 'on';
}
