import { taker } from '../../../equipment/take';
import { DAYS } from '../../../facility/site';
import { coverOf, hoursWithNobody } from '../../../rota/cover';
import type { Remedy } from '../remedy';

/** Somebody on call in the hours when nobody is. */
export const remedy: Remedy = {
  id: 'rota-gap',
  changes: 'people',
  places: (facility) =>
    facility.people.length > 0 && hoursWithNobody(coverOf(facility, taker('nominal'))).length > 0
      ? [{ key: facility.site.key, title: 'Somebody on call at every hour' }]
      : [],
  apply: (facility) => ({
    ...facility,
    shifts: [
      ...facility.shifts,
      {
        key: 'proposed-on-call',
        kind: 'on-call',
        people: facility.people.map(({ key }) => key),
        days: [...DAYS],
        from: '00:00',
        to: '00:00',
      },
    ],
  }),
};
