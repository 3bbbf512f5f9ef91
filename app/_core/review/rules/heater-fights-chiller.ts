import { CHILLER } from './example/equipment';
import { example, withMore, withPlan } from './example/example';
import { bandEnds, bandGaps } from './facts/bands';
import { figure } from './facts/words';
import type { Rule } from './rule';

/** A heater that heats up to where a chiller still cools. */
export const rule: Rule = {
  id: 'heater-fights-chiller',
  title: 'The bands of heater and chiller overlap',
  why: 'The one undoes what the other does: both start often, wear early and cost their power twice.',
  source: 'Heater and chiller fighting; common practice, no source',
  grade: 'medium',
  remedy: 'part-bands',
  check: (context) =>
    bandGaps(context)
      .filter(({ gap }) => gap < 0)
      .map((pair) => ({
        cause: `${pair.heater.name} and ${pair.chiller.name}`,
        consequence: `${pair.heater.name} heats on where ${pair.chiller.name} already cools.`,
        figures: [...bandEnds(pair), figure('overlap', -pair.gap, 'K', 2)],
      })),
  passing: () => example(withMore(CHILLER)),
  failing: () =>
    example(
      withMore(CHILLER),
      withPlan('chiller', ({ regulation }) =>
        regulation.kind === 'thermostat' ? { regulation: { ...regulation, lowC: 25.6, highC: 26 } } : {},
      ),
    ),
};
