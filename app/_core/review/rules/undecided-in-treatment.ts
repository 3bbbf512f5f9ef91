import { example, withPlan, withState } from './example/example';
import { ofType, uses } from './facts/equipment';
import type { Rule } from './rule';

/** Skimmer, ozone or UV of which the plan says nothing during a treatment. */
export const rule: Rule = {
  id: 'undecided-in-treatment',
  title: 'What a treatment does with skimmer, ozone and UV is not decided',
  why: 'Left on they take the medicine out or destroy it; off, the skimmer takes most of the air with it.',
  source: 'Treatment: skimmer, ozone and UV as prescribed; common practice, no source',
  grade: 'low',
  remedy: 'decide-in-state',
  check: (context) => {
    if (!uses(context, 'treatment')) return [];
    return ofType(context, 'skimmer', 'ozone', 'uv')
      .filter(({ plan }) => !plan.states.some(({ state }) => state === 'treatment'))
      .map(({ name }) => ({
        cause: name,
        consequence: 'Its plan says neither on nor off for the treatment.',
        figures: [{ name: 'during treatment', value: 'not said' }],
      }));
  },
  passing: () => example(withState('treatment'), withPlan('skimmer', decided)),
  failing: () => example(withState('treatment')),
};

function decided({ states }: Parameters<Parameters<typeof withPlan>[1]>[0]) {
  return { states: [...states, { state: 'treatment' as const, then: 'off' as const, by: 'controller' as const }] };
}
