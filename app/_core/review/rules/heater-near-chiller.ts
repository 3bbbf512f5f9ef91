import { CHILLER } from './example/equipment';
import { example, withMore, withPlan } from './example/example';
import { bandEnds, bandGaps } from './facts/bands';
import { figure } from './facts/words';
import type { Rule } from './rule';

/** K between the bands: less is soon lost to a probe that drifts. Common practice, no source. */
const LEAST = 1;

/** A chiller's band that begins too soon above the heater's. */
export const rule: Rule = {
  id: 'heater-near-chiller',
  title: 'The bands of heater and chiller lie less than one kelvin apart',
  why: 'Two probes that differ by half a degree, or the overshoot of either, are enough to set them against each other.',
  source: 'A gap of at least 1 °C from heater to chiller: common practice, no source',
  grade: 'low',
  remedy: 'part-bands',
  check: (context) =>
    bandGaps(context)
      // Overlapping ones are the graver rule's.
      .filter(({ gap }) => gap >= 0 && gap < LEAST - 1e-9)
      .map((pair) => ({
        cause: `${pair.heater.name} and ${pair.chiller.name}`,
        consequence: `${pair.chiller.name} cools down to hardly more than ${pair.heater.name} heats up to.`,
        figures: [...bandEnds(pair), figure('between the bands', pair.gap, 'K', 2)],
      })),
  passing: () => example(withMore(CHILLER)),
  failing: () =>
    example(
      withMore(CHILLER),
      withPlan('chiller', ({ regulation }) =>
        regulation.kind === 'thermostat' ? { regulation: { ...regulation, lowC: 26.3 } } : {},
      ),
    ),
};
