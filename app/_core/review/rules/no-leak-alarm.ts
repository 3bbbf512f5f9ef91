import { example, withoutAlarms } from './example/example';
import { alarmsOn } from './facts/alarms';
import type { Rule } from './rule';

/**
 * Water can stand on the floor without anybody being called. Demanded where a sump means pipes, pumps and an overflow.
 */
export const rule: Rule = {
  id: 'no-leak-alarm',
  title: 'No alarm calls when water is on the floor',
  why: 'A flood shows on the floor before it shows in the tanks, and water near plugs endangers people.',
  source:
    'Water ran for ten hours of a night unseen, about 757 L (boingboing.net, 2009-02-27); a hose slipped off a pump at night (aquariumadventures.blogspot.com, 2009-07)',
  grade: 'low',
  remedy: 'leak-alarm',
  check: (context) => {
    const sump = context.system.tanks.find(({ role }) => role === 'sump');
    if (sump === undefined || alarmsOn(context, 'leak').length > 0) return [];
    return [
      {
        cause: 'Floor',
        consequence: 'Water that runs over or out stays unseen until the next round.',
        figures: [{ name: 'alarm on a leak sensor', value: 'none' }],
      },
    ];
  },
  passing: () => example(),
  failing: () => example(withoutAlarms('floor-wet')),
};
