import type { Figure } from '../../../facility/figure';
import { PROPOSED, placesOf, proposed, withEquipment } from '../edit';
import type { Remedy } from '../remedy';

const half = (figure: Figure | undefined) => (figure?.value ? { ratedW: proposed(figure.value / 2) } : {});

/** The heat of one heater shared between two of half its power. */
export const remedy: Remedy = {
  id: 'split-heaters',
  changes: 'water',
  places: (_, system) =>
    placesOf(system, 'heater', 'Two of half the power instead of', (e) => Boolean(e.ratedW?.value)),
  apply: (facility, system, { key }) =>
    withEquipment(facility, system, key, ({ wattsRange, ...e }) => {
      const range = wattsRange && { wattsRange: { minW: wattsRange.minW / 2, maxW: wattsRange.maxW / 2 } };
      const one = { ...e, ...half(e.ratedW), ...range };
      return [one, { ...one, key: `${PROPOSED}-half-${key}`, name: `Second half of ${e.name}` }];
    }),
};
