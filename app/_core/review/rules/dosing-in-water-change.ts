import { example, withMore } from './example/example';
import { FEEDER } from './example/dosed';
import { ofType, stopsIn, uses } from './facts/equipment';
import type { Rule } from './rule';

/** Dosing, carbon dioxide, ozone or feed that goes on while water is drawn. */
export const rule: Rule = {
  id: 'dosing-in-water-change',
  title: 'Dosing, gas or feed goes on in a water change',
  why: 'The same dose goes into less water, where nobody expects it.',
  source: 'Water change: dosing, CO2, ozone and feeder off; common practice, no source',
  grade: 'low',
  remedy: 'off-in-state',
  check: (context) => {
    if (!uses(context, 'water-change')) return [];
    return ofType(context, 'doser', 'co2', 'ozone', 'feeder')
      .filter((one) => one.plan.regulation.kind !== 'never' && !stopsIn(context, one, 'water-change'))
      .map(({ name }) => ({
        cause: name,
        consequence: 'It goes on into what is left.',
        figures: [{ name: 'off in a water change', value: 'not said' }],
      }));
  },
  passing: () => example(withMore(FEEDER)),
  failing: () => example(withMore({ ...FEEDER, plan: { ...FEEDER.plan, states: [] } })),
};
