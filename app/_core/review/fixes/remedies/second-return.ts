import { otherCircuit, PROPOSED, placesOf, proposed, withEquipment } from '../edit';
import type { Remedy } from '../remedy';

/** The return shared between two pumps of half the flow, on different circuits where the site has them. */
export const remedy: Remedy = {
  id: 'second-return',
  changes: 'water',
  places: (_, system) => {
    const pumps = system.equipment.filter(({ type }) => type === 'return-pump');
    return pumps.length === 1
      ? placesOf(system, 'return-pump', 'Two pumps instead of', (e) => Boolean(e.flowLPerH?.value))
      : [];
  },
  apply: (facility, system, { key }) =>
    withEquipment(facility, system, key, ({ wattsRange, ...e }) => {
      const half = {
        flowLPerH: proposed((e.flowLPerH?.value ?? 0) / 2),
        ...(e.ratedW?.value ? { ratedW: proposed(e.ratedW.value / 2) } : {}),
      };
      const range = wattsRange && { wattsRange: { minW: wattsRange.minW / 2, maxW: wattsRange.maxW / 2 } };
      const circuit = otherCircuit(facility, [e])?.key;
      const one = { ...e, ...half, ...range };
      return [one, { ...one, key: `${PROPOSED}-${key}`, name: `Second ${e.name}`, ...(circuit ? { circuit } : {}) }];
    }),
};
