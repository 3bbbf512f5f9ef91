import { changed, example, withSystem } from './example/example';
import { entered } from './example/proven';
import { drained, drainFigures } from './facts/drained';
import type { Rule } from './rule';

/** More water comes down at every stop of the return than the sump has room for. */
export const rule: Rule = {
  id: 'drain-down-over-sump',
  title: 'What drains down when the return stops does not fit into the sump',
  why: 'Every outage, every feeding pause and every trip then puts the difference on the floor, and the pump starts again with that much less.',
  source:
    'Area times depth; about 38 L came down from a 473 L tank with its outlet at the surface (fins.actwin.com, aquatic-plants 1999-07, 246)',
  grade: 'medium',
  remedy: 'room-in-sump',
  check: (context) => {
    const water = drained(context);
    if (water === null || !(water.withBreaks > water.space)) return [];
    return [
      {
        cause: water.sump,
        consequence: 'Water goes over its rim whenever the return stops.',
        figures: drainFigures(water, water.withBreaks),
      },
    ];
  },
  passing: () => example(),
  failing: () => example(withSystem(({ tanks }) => ({ tanks: changed(tanks, 'sump', { rimMm: entered(20) }) }))),
};
