import { proposed } from '../edit';
import type { Remedy } from '../remedy';

/** min that the nearest needs. Common practice, no source. */
const NEAR_MIN = 10;

/** Somebody nearer on call. */
export const remedy: Remedy = {
  id: 'quicker-hands',
  changes: 'people',
  places: ({ site, people, shifts }) => {
    const called = new Set(shifts.filter(({ kind }) => kind === 'on-call').flatMap((shift) => shift.people));
    const isFar = people.some((p) => called.has(p.key) && (p.travelMin?.value ?? Number.POSITIVE_INFINITY) > NEAR_MIN);
    return isFar ? [{ key: site.key, title: `On call at most ${NEAR_MIN} minutes away` }] : [];
  },
  apply: (facility) => ({
    ...facility,
    people: facility.people.map((p) => ({
      ...p,
      travelMin: proposed(Math.min(NEAR_MIN, p.travelMin?.value ?? NEAR_MIN)),
    })),
  }),
};
