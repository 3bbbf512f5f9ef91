import { changed, example, withSite } from './example/example';
import { feedOfAllMovers, moversOf } from './facts/feeds';
import { listed } from './facts/words';
import type { Rule } from './rule';

/** Everything that brings oxygen or moves the water goes dead at one trip. */
export const rule: Rule = {
  id: 'all-on-one-rcd',
  title: 'All air and all movement of the water hang on one RCD group or one circuit',
  why: 'One wet plug or leaking pump takes them all at once, and an RCD does not come back by itself.',
  source:
    'A storm tripped the one device that fed the pump which aerated a lagoon: all 18 rays and 3 sharks were dead by morning (fox17online.com, 2016-07-08); one tripped in an outage and everything on it was lost (tonmo.com, thread 335)',
  grade: 'high',
  remedy: 'split-rcd',
  check: (context) => {
    const feed = feedOfAllMovers(context);
    if (feed === null) return [];
    const names = moversOf(context).map(({ name }) => name);
    const consequence = `One trip stops ${listed(names)}; nothing else brings air or moves the water.`;
    return [
      { cause: `${feed.kind} ${feed.name}`, consequence, figures: [{ name: 'hang on it', value: `${names.length}` }] },
    ];
  },
  passing: () => example(),
  failing: () => example(withSite(({ circuits }) => ({ circuits: changed(circuits, 'air', { rcd: 'RCD 1' }) }))),
};
