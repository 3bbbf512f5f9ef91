import type { Facility } from '#core/facility/facility';
import { shiftDates } from '#core/facility/shift-dates';
import { daysBetween } from '#core/time/days';

/** The day the dates in the demonstration files belong to, ISO date. */
export const DEMO_DATE = '2026-11-25';

/** A facility file of the demonstration: the key of its site, and its path from the top of the tree. */
export interface DemoFile {
  key: string;
  path: string;
}

/** The three sites of the demonstration: a small public aquarium, and the two branches of a fish shop. */
export const DEMO_FILES: readonly DemoFile[] = [
  { key: 'harbour', path: 'seed/harbour-aquarium.yaml' },
  { key: 'quay-street', path: 'seed/shop-quay-street.yaml' },
  { key: 'mill-lane', path: 'seed/shop-mill-lane.yaml' },
];

/**
 * A demonstration site as if its dates had been written for another day, so that what was tested last week stays so.
 *
 * @param facility a site read from one of `DEMO_FILES`
 * @param on       ISO date on which it is to be shown
 * @returns the site with all its dates moved; what was passed in stays as it is
 */
export function demoOn(facility: Facility, on: string): Facility {
  return shiftDates(facility, daysBetween(DEMO_DATE, on));
}
