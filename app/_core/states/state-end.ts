/**
 * What this room knows: how an operating state ends, what shows afterwards that everything runs again, and how long that is
 * watched.
 * What it leaves out: what a state does to the water, which `simulate` works out, and who begins and ends one.
 * Where the numbers come from: the watts ranges and plans that people entered.
 */
import type { StateName, System } from '../facility/system';

/** A state somebody or something puts a system into. */
export type Begun = Exclude<StateName, 'normal'>;

/** States with hands in the water: whatever a controller claims, a person ends them, having looked. Common practice, no source. */
const HANDS_IN: ReadonlySet<StateName> = new Set([
  'water-change',
  'backwash',
  'treatment',
  'hands-in',
  'diving',
  'ozone-work',
]);

/** Whether a state has hands in the water, or in the ozone, so that it never ends by itself. */
export function hasHandsIn(state: StateName): boolean {
  return HANDS_IN.has(state);
}

/** Whether a device ends the state of a system: described so, and without hands in the water. */
export function endsItself({ states }: Pick<System, 'states'>, state: Begun): boolean {
  const described = states.find(({ name }) => name === state);
  return described !== undefined && described.endsBy !== 'person' && !hasHandsIn(state);
}

/** How long a lead's word lets a treatment go on, h: it is looked at anew each day. Common practice, no source. */
const AUTHORITY_H = 24;

/**
 * Until when a state may go on without a lead saying so anew; null where nobody has to.
 *
 * @param sinceMs   when a lead last let it go on; else when it began
 */
export function authorisedUntil(state: StateName, sinceMs: number): number | null {
  return state === 'treatment' ? sinceMs + AUTHORITY_H * 3_600_000 : null;
}
