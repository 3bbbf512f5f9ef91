import { example, withPlan } from './example/example';
import { ofType, stopsIn, uses } from './facts/equipment';
import { figure } from './facts/words';
import type { Rule } from './rule';

/** A skimmer that runs on while water is drawn and put back. */
export const rule: Rule = {
  id: 'skimmer-in-water-change',
  title: 'A skimmer is not stopped in a water change',
  why: 'The level leaves its working depth on the way down and on the way up: it runs dry, then overflows.',
  source: 'Water change: the skimmer off; common practice, no source',
  grade: 'low',
  remedy: 'off-in-state',
  check: (context) => {
    if (!uses(context, 'water-change')) return [];
    const running = ofType(context, 'skimmer').filter((one) => !stopsIn(context, one, 'water-change'));
    const drawn = context.system.states.find(({ name }) => name === 'water-change')?.drawnL?.value ?? null;
    const figures = drawn === null ? [] : [figure('water drawn', drawn, 'L')];
    return running.map(({ name }) => ({
      cause: name,
      consequence: 'Its plan does not say that it is off while the level is changed.',
      figures,
    }));
  },
  passing: () =>
    // Stopped with the return, which is off meanwhile: as good as a line of its own.
    example(
      withPlan('return', ({ states }) => ({
        states: [...states, { state: 'water-change', then: 'off', by: 'controller' }],
      })),
      withPlan('skimmer', ({ states }) => ({ states: states.filter(({ state }) => state !== 'water-change') })),
    ),
  failing: () =>
    example(withPlan('skimmer', ({ states }) => ({ states: states.filter(({ state }) => state !== 'water-change') }))),
};
