import { example, withPlan } from './example/example';
import { ofType, stopsIn, uses } from './facts/equipment';
import type { Rule } from './rule';

/** A top-off that refills with fresh water what a water change has drawn. */
export const rule: Rule = {
  id: 'top-off-in-water-change',
  title: 'A top-off is not stopped in a water change',
  why: 'It takes the drawn water for evaporation and puts fresh water in its place before the new water comes.',
  source: 'Water change: the top-off off, or it refills the part you drained; common practice, no source',
  grade: 'medium',
  remedy: 'off-in-state',
  check: (context) => {
    if (!uses(context, 'water-change')) return [];
    const running = ofType(context, 'top-off').filter(
      (one) => one.plan.regulation.kind === 'level' && !stopsIn(context, one, 'water-change'),
    );
    return running.map(({ name }) => ({
      cause: name,
      consequence: 'It starts as soon as the level falls, and dilutes what is left.',
      figures: [{ name: 'off in a water change', value: 'not said' }],
    }));
  },
  passing: () => example(),
  failing: () => example(withPlan('top-off', () => ({ states: [] }))),
};
