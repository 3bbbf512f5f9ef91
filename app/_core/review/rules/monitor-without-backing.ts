import { changed, example, withSite } from './example/example';
import { alarmPathOf } from './facts/alarm-path';
import { circuitOf } from './facts/feeds';
import type { Rule } from './rule';

/** A part of the alarms' way that an outage silences. */
export const rule: Rule = {
  id: 'monitor-without-backing',
  title: 'Gateway, router or host has neither battery nor generator behind it',
  why: 'When the utility fails, the alarm about it is never sent.',
  source: 'Gateway on a battery; common practice, no source',
  grade: 'medium',
  remedy: 'gateway-power',
  check: (context) =>
    alarmPathOf(context).flatMap(({ name, circuit }) => {
      const own = circuitOf(context, circuit);
      if (own !== undefined && own.backedBy.length > 0) return [];
      const value = own === undefined ? 'not known' : own.name;
      const consequence = 'It falls silent with the utility, and with it every alarm that travels this way.';
      return [{ cause: name, consequence, figures: [{ name: 'circuit', value }] }];
    }),
  passing: () => example(),
  failing: () =>
    example(withSite(({ monitors }) => ({ monitors: changed(monitors, 'router', { circuit: undefined }) }))),
};
