import { PROPOSED, placesOf, withEquipment } from '../edit';
import type { Remedy } from '../remedy';

/** A second chiller like the only one. */
export const remedy: Remedy = {
  id: 'second-chiller',
  changes: 'water',
  places: (_, system) =>
    system.equipment.filter(({ type }) => type === 'chiller').length === 1
      ? placesOf(system, 'chiller', 'A second chiller beside', () => true)
      : [],
  apply: (facility, system, { key }) =>
    withEquipment(facility, system, key, (e) => [e, { ...e, key: `${PROPOSED}-${key}`, name: `Second ${e.name}` }]),
};
