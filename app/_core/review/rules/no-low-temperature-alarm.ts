import { example, withoutAlarms } from './example/example';
import { uncalled } from './facts/alarms';
import type { Rule } from './rule';

/**
 * No alarm calls before the water is too cold for its animals. Demanded of every system: a chiller stuck on or a dead
 * heater reaches all.
 */
export const rule: Rule = {
  id: 'no-low-temperature-alarm',
  title: 'No alarm calls before the water is too cold',
  why: 'Cooling takes a day and gives time to act, but only to somebody who knows.',
  source: 'Common practice, no source',
  grade: 'medium',
  remedy: 'low-alarm',
  check: (context) => uncalled(context, { quantity: 'temperature', side: 'below', name: 'Too cold', unit: '°C' }),
  passing: () => example(),
  failing: () => example(withoutAlarms('too-cold')),
};
