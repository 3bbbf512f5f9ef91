import type { Facility } from '../../facility/facility';
import { REMEDIES } from './catalogue';
import type { Place, Remedy } from './remedy';
import type { Stand } from './stand';

/** A remedy at a place. */
export interface Candidate {
  /** Stable: remedy and key of the thing. */
  id: string;
  remedy: Remedy;
  place: Place;
}

/** Every remedy wherever it can be made, by id: the order in which things are described makes no difference. */
export function candidatesOf({ facility, system }: Pick<Stand, 'facility' | 'system'>): Candidate[] {
  const all = REMEDIES.flatMap((remedy) =>
    remedy.places(facility, system).map((place) => ({ id: `${remedy.id}:${place.key}`, remedy, place })),
  );
  return all.sort((a, b) => (a.id < b.id ? -1 : 1));
}

/** The site with the change made. */
export function changed(
  { facility, system }: Pick<Stand, 'facility' | 'system'>,
  { remedy, place }: Candidate,
): Facility {
  return remedy.apply(facility, system, place);
}
