import { moversOf, stocked, withPlan } from '../edit';
import type { Remedy } from '../remedy';

/** Air or circulation that keeps running through the pause. */
export const remedy: Remedy = {
  id: 'air-in-pause',
  changes: 'water',
  places: (_, system) => {
    const movers = new Set(stocked(system).flatMap(({ key }) => moversOf(system, key)));
    return [...movers]
      .filter(
        (e) => e.type !== 'skimmer' && e.plan.states.some(({ state, then }) => state === 'feeding' && then === 'off'),
      )
      .map(({ key, name }) => ({ key, title: `${name} on through the feeding pause` }));
  },
  apply: (facility, system, { key }) =>
    withPlan(facility, system, key, ({ states }) => ({ states: states.filter(({ state }) => state !== 'feeding') })),
};
