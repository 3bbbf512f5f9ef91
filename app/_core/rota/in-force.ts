import type { Facility } from '../facility/facility';

/**
 * A site with the shifts alone that are in force on a day: one that is over, or has not begun, is no cover for the usual week.
 * @param on "YYYY-MM-DD"
 */
export function shiftsInForce(facility: Facility, on: string): Facility {
  const shifts = facility.shifts.filter(
    ({ starts, ends }) => (starts === undefined || starts <= on) && (ends === undefined || on <= ends),
  );
  return shifts.length === facility.shifts.length ? facility : { ...facility, shifts };
}
