import type { System, Tank, TankRole } from '../facility/system';

/** How clean the water of a place is: 0 is walked first, 4 last. */
export type Cleanness = 0 | 1 | 2 | 3 | 4;

/** What each step of the order stands for. */
export const CLEANNESS_WORDS = [
  'nursery and live food',
  'corals and invertebrates',
  'displays',
  'holding',
  'quarantine',
] as const;

/** Tanks that animals live in; the others are part of the plant. */
const LIVED_IN: readonly TankRole[] = ['nursery', 'display', 'holding', 'quarantine'];

/**
 * How clean the water of a system is taken to be. Its tanks share water, so its dirtiest tank decides.
 * Order: clean before dirty, quarantine after all other animals. Common practice, no source.
 */
export function cleannessOf(system: Pick<System, 'kind' | 'tanks'>): Cleanness {
  const roles = system.tanks.map(({ role }) => role).filter((role) => LIVED_IN.includes(role));
  if (system.kind === 'quarantine' || roles.includes('quarantine')) return 4;
  if (system.kind === 'live-food') return 0;
  if (roles.length > 0 && roles.every((role) => role === 'nursery')) return 0;
  if (system.kind === 'reef' || system.kind === 'coral-farm' || system.kind === 'jelly') return 1;
  return roles.includes('display') ? 2 : 3;
}

/** Systems in the order in which they are walked: clean before dirty, and as described within. */
export function inWalkingOrder(systems: readonly System[]): System[] {
  return [...systems].sort((a, b) => cleannessOf(a) - cleannessOf(b));
}

/** The tanks of a system that animals live in, nursery first and quarantine last, as described within. */
export function livedIn(system: Pick<System, 'tanks'>): Tank[] {
  return system.tanks
    .filter(({ role }) => LIVED_IN.includes(role))
    .sort((a, b) => LIVED_IN.indexOf(a.role) - LIVED_IN.indexOf(b.role));
}
