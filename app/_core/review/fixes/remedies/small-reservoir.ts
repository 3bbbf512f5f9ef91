import { proposed, withTank } from '../edit';
import type { Remedy } from '../remedy';

/** Part of its content that is left. Common practice, no source. */
const PART = 1 / 4;

/** A smaller reservoir. */
export const remedy: Remedy = {
  id: 'small-reservoir',
  changes: 'water',
  places: (_, { tanks, equipment }) =>
    tanks
      .filter((t) => t.role === 'reservoir' && t.volumeL.value && equipment.some((e) => e.source === t.key))
      .map(({ key, name }) => ({ key, title: `${name} of a quarter of its size` })),
  apply: (facility, system, { key }) =>
    withTank(facility, system, key, (t) => ({ ...t, volumeL: proposed((t.volumeL.value ?? 0) * PART) })),
};
