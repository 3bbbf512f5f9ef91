import { PROPOSED, withCircuits } from '../edit';
import type { Remedy } from '../remedy';

/** A stand-by set that carries every circuit this system hangs on. */
export const remedy: Remedy = {
  id: 'generator',
  changes: 'water',
  places: ({ site }) => (site.generator ? [] : [{ key: site.key, title: 'A stand-by generator for all its circuits' }]),
  apply: (facility, { equipment }) => {
    const used = new Set(equipment.map(({ circuit }) => circuit));
    const fed = withCircuits(facility, (c) => (used.has(c.key) ? { ...c, backedBy: [...c.backedBy, 'generator'] } : c));
    return { ...fed, site: { ...fed.site, generator: { safeguard: PROPOSED } } };
  },
};
