import { example, withSystem, changed } from './example/example';
import { entered } from './example/proven';
import { emptied } from './facts/emptied-reservoir';
import { ofType } from './facts/equipment';
import { strictest } from './facts/limits';
import { numbersOf } from './facts/water';
import { figure, plain } from './facts/words';
import type { Rule } from './rule';

/** A reservoir whose whole content would dilute the water beyond a limit of harm. Fresh water has no such limit. */
export const rule: Rule = {
  id: 'reservoir-too-large',
  title: 'The whole content of a reservoir would take salinity out of what the animals stand',
  why: 'A reservoir that can be survived is the one safeguard against a top-off stuck on that cannot fail.',
  source:
    'Conservation of salt (the dilution laws of the almanac); a reservoir of at most 5 % of the water is common practice, no source',
  grade: 'medium',
  remedy: 'small-reservoir',
  check: (context) => {
    const limit = strictest(context, 'salinity', 'below');
    if (limit === null) return [];
    const numbers = numbersOf(context);
    // Water that is below the limit before anything runs in is another matter.
    if (!(numbers.salinity > limit)) return [];
    return ofType(context, 'top-off').flatMap((topOff) => {
      const end = emptied(context, numbers, topOff);
      if (end === null || !(end.salinity < limit)) return [];
      const mains = end.added === Number.POSITIVE_INFINITY;
      const consequence = mains
        ? 'It is fed from the mains, which never run empty.'
        : `All of it run in takes salinity from ${plain(numbers.salinity)} to ${plain(end.salinity)}, below the limit of ${limit}.`;
      const figures = [
        mains ? { name: 'reservoir', value: 'mains' } : figure('reservoir', end.added * 1000, 'L'),
        figure('water in the system', end.volume * 1000, 'L'),
        { name: 'salinity after', value: end.salinity.toFixed(1) },
        { name: 'limit of harm', value: `${limit}` },
      ];
      return [{ cause: topOff.name, consequence, figures }];
    });
  },
  passing: () => example(),
  failing: () =>
    example(withSystem(({ tanks }) => ({ tanks: changed(tanks, 'reservoir', { volumeL: entered(100) }) }))),
};
