import type { Facility } from '../../../facility/facility';
import type { System } from '../../../facility/system';
import { moversOf, proposed, stocked, withCircuits } from '../edit';
import type { Remedy } from '../remedy';

/** min that a battery carries air. Common practice, no source. */
const BATTERY_MIN = 480;

/** Circuits that carry air or movement in a tank with animals and nothing backs. */
function bare({ circuits }: Facility, system: System) {
  const movers = stocked(system).flatMap(({ key }) => moversOf(system, key));
  return circuits.filter((c) => c.backedBy.length === 0 && movers.some((e) => e.circuit === c.key));
}

/** Air on the generator where there is one, else on a battery. */
export const remedy: Remedy = {
  id: 'backed-air',
  changes: 'water',
  places: (facility, system) =>
    bare(facility, system).map(({ key, name }) => ({
      key,
      title: `${name} on ${facility.site.generator ? 'the generator' : 'a battery'}`,
    })),
  apply: (facility, _, { key }) =>
    withCircuits(facility, (c) => {
      if (c.key !== key) return c;
      return facility.site.generator
        ? { ...c, backedBy: [...c.backedBy, 'generator'] }
        : { ...c, backedBy: [...c.backedBy, 'ups'], upsMin: proposed(BATTERY_MIN) };
    }),
};
