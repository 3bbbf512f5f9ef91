import { example, withMore, withoutAlarms } from './example/example';
import { CO2, PH_PROBE } from './example/dosed';
import { alarmsOn } from './facts/alarms';
import { ofType } from './facts/equipment';
import { listed } from './facts/words';
import type { Rule } from './rule';

/** Carbon dioxide or an alkaline or acid dose, and no alarm on pH. */
export const rule: Rule = {
  id: 'no-ph-alarm',
  title: 'No alarm on pH where something changes it',
  why: 'A dose without end shows in pH hours before it shows in the animals.',
  source: 'pH high and low stop on the tank; common practice, no source',
  grade: 'low',
  remedy: 'ph-alarm',
  check: (context) => {
    const changing = ofType(context, 'co2', 'doser');
    if (changing.length === 0 || alarmsOn(context, 'ph').length > 0) return [];
    return [
      {
        cause: listed(changing.map(({ name }) => name).sort()),
        consequence: 'Nobody is called before the animals show it.',
        figures: [{ name: 'alarms on pH', value: 'none' }],
      },
    ];
  },
  passing: () => example(withMore(CO2), PH_PROBE),
  failing: () => example(withMore(CO2), PH_PROBE, withoutAlarms('ph-low')),
};
