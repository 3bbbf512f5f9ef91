import { otherCircuit, PROPOSED, placesOf, withEquipment } from '../edit';
import type { Remedy } from '../remedy';

/** A second heater like the only one, on another circuit. */
export const remedy: Remedy = {
  id: 'second-heater',
  changes: 'water',
  places: (facility, system) => {
    const heaters = system.equipment.filter(({ type }) => type === 'heater');
    if (heaters.length !== 1 || !otherCircuit(facility, heaters)) return [];
    return placesOf(system, 'heater', 'A second heater on another circuit, beside', () => true);
  },
  apply: (facility, system, { key }) =>
    withEquipment(facility, system, key, (e) => {
      const circuit = otherCircuit(facility, [e])?.key;
      return [e, { ...e, key: `${PROPOSED}-${key}`, name: `Second ${e.name}`, ...(circuit ? { circuit } : {}) }];
    }),
};
