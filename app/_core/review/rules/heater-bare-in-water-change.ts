import { example, withPlan } from './example/example';
import { ofType, stopsIn, uses } from './facts/equipment';
import type { Rule } from './rule';

/** A heater that goes on while the water is drawn from around it. */
export const rule: Rule = {
  id: 'heater-bare-in-water-change',
  title: 'A heater is not stopped in a water change',
  why: 'The element comes out of the water, cracks, and may make the water live for the next hand in it.',
  source: 'Water change: the heater off below the minimum level; common practice, no source',
  grade: 'medium',
  remedy: 'off-in-state',
  check: (context) => {
    if (!uses(context, 'water-change')) return [];
    return ofType(context, 'heater')
      .filter((one) => !stopsIn(context, one, 'water-change') && !one.plan.cutOuts.some((c) => c.quantity === 'level'))
      .map(({ name }) => ({
        cause: name,
        consequence: 'Nothing switches it off when the level falls.',
        figures: [{ name: 'off in a water change', value: 'not said' }],
      }));
  },
  passing: () => example(),
  failing: () => example(withPlan('heater-1', () => ({ states: [] }))),
};
