import { moversOf, PROPOSED, stocked, withCircuits } from '../edit';
import type { Remedy } from '../remedy';

/** A circuit that carries air behind an RCD of its own. */
export const remedy: Remedy = {
  id: 'split-rcd',
  changes: 'water',
  places: ({ circuits }, system) => {
    const movers = stocked(system).flatMap(({ key }) => moversOf(system, key));
    return circuits
      .filter((c) => c.rcd !== undefined && circuits.some((other) => other !== c && other.rcd === c.rcd))
      .filter((c) => movers.some(({ circuit }) => circuit === c.key))
      .map(({ key, name }) => ({
        key,
        title: `${name} behind an RCD (GFCI) of its own (a licensed electrician's work)`,
      }));
  },
  apply: (facility, _, { key }) =>
    withCircuits(facility, (c) => (c.key === key ? { ...c, rcd: `${PROPOSED}-${key}` } : c)),
};
