import { HOUR } from '../../time/week';
import { span } from '../words';
import { example, withoutAlarms, withSystem } from './example/example';
import { uncalled } from './facts/alarms';
import { breathedDown } from './facts/dense';
import { profilesOf, strictest } from './facts/limits';
import { numbersOf } from './facts/water';
import type { Rule } from './rule';

/** Stock that breathes its water down to the limit sooner than this is dense. */
const DENSE_S = 2 * HOUR;

/**
 * No alarm calls before oxygen is short, where the animals are so many that they use it up within two hours. Not
 * demanded elsewhere: a probe that nobody needs is one more to calibrate.
 */
export const rule: Rule = {
  id: 'no-oxygen-alarm',
  title: 'Densely stocked, and no alarm calls before oxygen is short',
  why: 'Oxygen is gone sooner than anything else, and fish at the surface are seen only by somebody who is there.',
  source:
    'Up to two hours without flow are usually all right (life-aquatic.com, power outage instructions), hence two hours as what is dense; 21 animals of a lagoon died in one night without air (fox17online.com, 2016-07-08)',
  grade: 'medium',
  remedy: 'oxygen-alarm',
  check: (context) => {
    const limit = strictest(context, 'oxygen', 'below');
    if (limit === null) return [];
    const warmest = Math.max(...profilesOf(context).map(({ usual }) => usual.temperatureC[1]));
    const tanks = breathedDown(numbersOf(context), warmest, limit).filter(({ afterS }) => afterS < DENSE_S);
    if (tanks.length === 0) return [];
    return uncalled(context, { quantity: 'oxygen', side: 'below', name: 'Oxygen', unit: 'mg/L' }).map((breach) => ({
      ...breach,
      figures: [
        ...breach.figures,
        ...tanks.map(({ tank, afterS }) => ({ name: `${tank}, limit without any air`, value: span(afterS) })),
      ],
    }));
  },
  // Thirty small fish in 432 L take nearly four hours.
  passing: () => example(withoutAlarms('oxygen-low')),
  failing: () =>
    example(
      withSystem(({ stock }) => ({ stock: stock.map((group) => ({ ...group, count: 300 })) })),
      withoutAlarms('oxygen-low'),
    ),
};
