import type { Remedy } from '../remedy';

/** Salinity read on the rounds that pass the system. */
export const remedy: Remedy = {
  id: 'salinity-round',
  changes: 'people',
  places: ({ rounds }, { key }) => {
    const passing = rounds.filter(({ systems }) => systems === undefined || systems.includes(key));
    const isRead = passing.some(({ sees }) => sees.includes('salinity'));
    return passing.length > 0 && !isRead ? [{ key, title: 'Salinity read on the rounds' }] : [];
  },
  apply: (facility, { key }) => ({
    ...facility,
    rounds: facility.rounds.map((one) =>
      one.systems === undefined || one.systems.includes(key) ? { ...one, sees: [...one.sees, 'salinity'] } : one,
    ),
  }),
};
