import { example, withoutAlarms } from './example/example';
import { uncalled } from './facts/alarms';
import type { Rule } from './rule';

/**
 * No alarm calls before the water is too warm for its animals. Demanded of every system: nothing is safe from heat.
 */
export const rule: Rule = {
  id: 'no-high-temperature-alarm',
  title: 'No alarm calls before the water is too warm',
  why: 'Overheating kills in hours; without an alarm it is found at the next round.',
  source: 'Sixteen of 33 rays died between two rounds of one night (6abc.com, archive 6286645)',
  grade: 'medium',
  remedy: 'high-alarm',
  check: (context) => uncalled(context, { quantity: 'temperature', side: 'above', name: 'Too warm', unit: '°C' }),
  passing: () => example(),
  failing: () => example(withoutAlarms('too-warm')),
};
