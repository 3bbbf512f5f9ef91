import { withSystem } from '../edit';
import type { Remedy } from '../remedy';

/** An alarm that nobody answers, answered by the rota. */
export const remedy: Remedy = {
  id: 'answer-alarm',
  changes: 'people',
  places: (_, { alarms }) =>
    alarms
      .filter(({ answeredBy }) => answeredBy === 'nobody')
      .map(({ key, name }) => ({ key, title: `The rota answers ${name}` })),
  apply: (facility, system, { key }) =>
    withSystem(facility, {
      ...system,
      alarms: system.alarms.map((one) => (one.key === key ? { ...one, answeredBy: 'rota' } : one)),
    }),
};
