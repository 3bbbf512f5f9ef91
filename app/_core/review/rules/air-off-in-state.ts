import { example, withPlan } from './example/example';
import { isOffIn, ofType } from './facts/equipment';
import { listed } from './facts/words';
import type { Rule } from './rule';

/** A state that switches all air off. */
export const rule: Rule = {
  id: 'air-off-in-state',
  title: 'A state switches all air off',
  why: 'Air is never part of a pause: a state that outlasts its time then takes the last oxygen with it.',
  source:
    'Air never in the pause; aeration of a display switched off by hand, told by former staff and not verified (roadsidezoonews.org, stingrays): taken as common practice, no source',
  grade: 'medium',
  remedy: 'air-in-pause',
  check: (context) => {
    const air = ofType(context, 'air-blower');
    if (air.length === 0) return [];
    return context.system.states
      .filter(({ name }) => air.every((one) => isOffIn(one, name)))
      .map(({ name }) => ({
        cause: name.replace('-', ' '),
        consequence: `It stops ${listed(air.map((one) => one.name))}, and no other air is left.`,
        figures: [{ name: 'air left', value: 'none' }],
      }));
  },
  passing: () => example(),
  failing: () => example(withPlan('blower', () => ({ states: [{ state: 'feeding', then: 'off', by: 'controller' }] }))),
};
