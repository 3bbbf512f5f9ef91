import type { Facility } from '../../facility/facility';
import type { System } from '../../facility/system';
import type { RemedyId } from '../remedies';

/** Where a remedy can be made and is not made yet. */
export interface Place {
  /** Key of the thing it is done to. */
  key: string;
  /** What is done to what: "A high cut-out on Heater 1". */
  title: string;
}

/** One remedy as a change of the description. One file each; `catalogue.ts` lists them. */
export interface Remedy {
  id: RemedyId;
  /**
   * What it changes: only who comes to know and how soon they come (`people`), or also what the water does (`water`). Changes of
   * the first kind cannot do harm by themselves, and no course need be simulated again but to see what a new alarm would raise.
   */
  changes: 'people' | 'water';
  places: (facility: Facility, system: System) => Place[];
  /** The same site with the change made at one of these places. The keys of what stays are kept. */
  apply: (facility: Facility, system: System, place: Place) => Facility;
}
