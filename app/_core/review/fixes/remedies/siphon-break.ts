import { proposed, withTank } from '../edit';
import type { Remedy } from '../remedy';

/** mm below the crest at which the hole is drilled. Common practice, no source. */
const BELOW_CREST_MM = 3;

/** A siphon-break hole near the surface, above the return's outlet. */
export const remedy: Remedy = {
  id: 'siphon-break',
  changes: 'water',
  places: (_, { tanks, equipment }) =>
    equipment.some(({ type }) => type === 'return-pump')
      ? tanks
          .filter((t) => t.siphonBreakMm === undefined && (t.outletMm?.value ?? 0) > hole(t.drainDownMm?.value))
          .map(({ key, name }) => ({ key, title: `A siphon-break hole in ${name}` }))
      : [],
  apply: (facility, system, { key }) =>
    withTank(facility, system, key, (t) => ({ ...t, siphonBreakMm: proposed(hole(t.drainDownMm?.value)) })),
};

function hole(drainDown: number | null | undefined): number {
  return (drainDown ?? 10) + BELOW_CREST_MM;
}
