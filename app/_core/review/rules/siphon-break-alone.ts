import { changed, example, withSystem } from './example/example';
import { entered } from './example/proven';
import { drained, drainFigures } from './facts/drained';
import type { Rule } from './rule';

/** The sump holds what drains down only as long as a small hole stays open. */
export const rule: Rule = {
  id: 'siphon-break-alone',
  title: 'Nothing but the siphon break keeps the sump from running over',
  why: 'A siphon-break hole clogs; the return then siphons back down to its outlet.',
  source:
    'Siphon breaks clog and are to be checked (aquariummaintenancebusiness.com, plumbing siphon breaks); 38 L came down with the outlet at the surface, some 380 L with it at the bottom (fins.actwin.com, aquatic-plants 1999-07, 246)',
  grade: 'low',
  remedy: 'room-in-sump',
  check: (context) => {
    const water = drained(context);
    // Where it runs over with the breaks open, the graver rule says so.
    if (water === null || water.withBreaks > water.space || !(water.withoutBreaks > water.space)) return [];
    return [
      {
        cause: water.sump,
        consequence: 'With the siphon break blocked, water goes over its rim when the return stops.',
        figures: drainFigures(water, water.withoutBreaks),
      },
    ];
  },
  passing: () => example(),
  failing: () => example(withSystem(({ tanks }) => ({ tanks: changed(tanks, 'display', { outletMm: entered(300) }) }))),
};
