import type { Figure } from '../facility/figure';
import type { Equipment, System, Tank } from '../facility/system';
import type { Plan, Regulation } from '../plans/plan';
import type { StartAnswers } from './answers';

/** What the answer to one question adds to a system. */
export type Parts = Partial<Pick<System, 'tanks' | 'equipment' | 'sensors' | 'safeguards' | 'alarms' | 'stock'>>;

/** What every answer builds on. */
export interface Ground {
  answers: StartAnswers;
  /** Tanks with animals in them; at least one. */
  tanks: readonly Tank[];
  /** Where equipment of the whole system hangs: the sump, or the first tank where there is none. */
  plant: Tank;
}

/** A safeguard that nobody has tested yet counts for half a year once somebody has. Common practice, no source. */
export const TEST_EVERY_DAYS = 180;

/** A figure as it was answered. */
export function entered(value: number, source?: string): Figure {
  return { value, origin: 'entered', ...(source === undefined ? {} : { source }) };
}

/** A plan that says what was answered and claims no protection that was not. */
export function plainPlan(regulation: Regulation, more: Partial<Plan> = {}): Plan {
  return { cutOuts: [], interlocks: [], states: [], regulation, ...more };
}

/** Plugged in and never switched. */
export const ALWAYS: Regulation = { kind: 'always', by: 'hard-wired' };

/** Where something hangs, if anybody said. */
export function onCircuit(circuit: string | undefined): Pick<Equipment, 'circuit'> {
  return circuit === undefined ? {} : { circuit };
}

/** Key and name of one of several that are alike: the number only where there is more than one. */
export function oneOf(key: string, name: string, at: number, count: number): { key: string; name: string } {
  return count === 1 ? { key, name } : { key: `${key}-${at + 1}`, name: `${name} ${at + 1}` };
}
