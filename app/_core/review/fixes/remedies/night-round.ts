import { DAYS } from '../../../facility/site';
import { ASPECTS } from '../../../rounds/slot';
import type { Remedy } from '../remedy';

/** When the last look of the day is taken. Common practice, no source. */
const [FROM, AT, TO] = ['22:15', '22:30', '22:45'];

/** One more round, late in the evening, by somebody who comes in for it. */
export const remedy: Remedy = {
  id: 'earlier-warning',
  changes: 'people',
  places: ({ site, people, rounds }) =>
    people.length > 0 && !rounds.some(({ at }) => at >= '21:00')
      ? [{ key: site.key, title: `One more round, at ${AT}` }]
      : [],
  apply: (facility) => ({
    ...facility,
    shifts: [
      ...facility.shifts,
      {
        key: 'proposed-night-check',
        kind: 'on-site',
        people: facility.people.slice(0, 1).map(({ key }) => key),
        days: [...DAYS],
        from: FROM,
        to: TO,
      },
    ],
    rounds: [
      ...facility.rounds,
      { key: 'proposed-night-check', name: 'Night check', days: [...DAYS], at: AT, sees: [...ASPECTS] },
    ],
  }),
};
