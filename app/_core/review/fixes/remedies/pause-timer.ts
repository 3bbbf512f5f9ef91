import { PROPOSED, withSystem } from '../edit';
import type { Remedy } from '../remedy';

/** A pause that a hard timer ends. */
export const remedy: Remedy = {
  id: 'pause-timer',
  changes: 'water',
  places: (_, { states }) =>
    states
      .filter(({ name, endSafeguard }) => name === 'feeding' && endSafeguard === undefined)
      .map(({ name }) => ({ key: name, title: 'A hard timer that ends the feeding pause' })),
  apply: (facility, system, { key }) =>
    withSystem(facility, {
      ...system,
      states: system.states.map((one) =>
        one.name === key ? { ...one, endsBy: 'controller', endSafeguard: PROPOSED } : one,
      ),
    }),
};
