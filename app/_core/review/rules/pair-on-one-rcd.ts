import type { EquipmentType } from '../../facility/system';
import { example, withEquipment } from './example/example';
import { feedOfAllMovers, moversOf, oneFeed } from './facts/feeds';
import { listed } from './facts/words';
import type { Rule } from './rule';

/** Equipment that stands in for one another. */
const DUTIES: { what: string; types: readonly EquipmentType[] }[] = [
  { what: 'air', types: ['air-blower'] },
  { what: 'pumps', types: ['return-pump', 'circulation-pump'] },
];

/** Two or more of one duty, of which the second is there for when the first fails, and which fail together. */
export const rule: Rule = {
  id: 'pair-on-one-rcd',
  title: 'All air blowers or all pumps hang on one RCD group or one circuit',
  why: 'A second one is no second one if the same trip stops both.',
  source: 'One RCD to a small group, never all air and all pumps on one; common practice, no source',
  grade: 'medium',
  remedy: 'split-rcd',
  check: (context) => {
    // Where everything hangs on one feed, the graver rule says so.
    if (feedOfAllMovers(context) !== null) return [];
    return DUTIES.flatMap(({ what, types }) => {
      const twins = moversOf(context).filter(({ type }) => types.includes(type));
      const feed = twins.length < 2 ? null : oneFeed(context, twins);
      if (feed === null) return [];
      const consequence = `One trip stops ${listed(twins.map(({ name }) => name))}.`;
      return [{ cause: `${feed.kind} ${feed.name}`, consequence, figures: [{ name: what, value: `${twins.length}` }] }];
    });
  },
  // One return and one blower back each other: each may be alone on its feed.
  passing: () => example(),
  failing: () => example(withEquipment('circulation', { circuit: 'pumps' })),
};
