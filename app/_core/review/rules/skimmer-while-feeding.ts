import { example, withPlan } from './example/example';
import { isOffIn, ofType, stopsIn, uses } from './facts/equipment';
import type { Rule } from './rule';

/** A skimmer that runs on in a feeding pause that stops the return. */
export const rule: Rule = {
  id: 'skimmer-while-feeding',
  title: 'A skimmer is not stopped while feeding, though the return pauses',
  why: 'With the return off the sump rises by what drains down, and the skimmer overflows at every meal.',
  source: 'Feeding: the skimmer off with the return; common practice, no source',
  grade: 'medium',
  remedy: 'off-in-state',
  check: (context) => {
    const paused = ofType(context, 'return-pump').filter((pump) => isOffIn(pump, 'feeding'));
    if (!uses(context, 'feeding') || paused.length === 0) return [];
    const running = ofType(context, 'skimmer').filter((one) => !stopsIn(context, one, 'feeding'));
    return running.map(({ name }) => ({
      cause: name,
      consequence: 'It goes on while the return pauses and the sump rises.',
      figures: [{ name: 'paused', value: paused.map((pump) => pump.name).join(', ') }],
    }));
  },
  passing: () => example(withPlan('skimmer', ({ states }) => ({ states: states.slice(1) }))),
  failing: () =>
    example(
      withPlan('skimmer', ({ states }) => ({
        states: states.slice(1),
        interlocks: [{ when: { kind: 'sensor', sensor: 'sump-level', above: 15 }, then: 'off', by: 'hard-wired' }],
      })),
    ),
};
