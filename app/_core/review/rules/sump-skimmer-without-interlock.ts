import { example, withPlan } from './example/example';
import { inSump, ofType, stopsWithoutFlow } from './facts/equipment';
import type { Rule } from './rule';

/** A skimmer in the sump that goes on when the return has stopped and the sump has risen. */
export const rule: Rule = {
  id: 'sump-skimmer-without-interlock',
  title: 'A skimmer in the sump is not stopped by a device when the return stops or the level is wrong',
  why: 'What drains down lifts the sump above its working depth: foam turns to water and goes over the cup to the floor, and the top-off puts fresh water in its place.',
  source: 'Return lost or level high: a skimmer off; common practice, no source',
  grade: 'medium',
  remedy: 'skimmer-interlock',
  check: (context) =>
    ofType(context, 'skimmer').flatMap((skimmer) => {
      if (!inSump(context, skimmer) || stopsWithoutFlow(context, skimmer)) return [];
      const consequence = 'It goes on in a sump that has risen by what drained down.';
      return [{ cause: skimmer.name, consequence, figures: [{ name: 'interlock by a device', value: 'none' }] }];
    }),
  passing: () =>
    example(
      withPlan('skimmer', () => ({
        interlocks: [{ when: { kind: 'sensor', sensor: 'sump-level', above: 15 }, then: 'off', by: 'hard-wired' }],
      })),
    ),
  // Feeding is left to its own line, so that only the interlock is missing.
  failing: () => example(withPlan('skimmer', () => ({ interlocks: [] }))),
};
