import { example, withSystem } from './example/example';
import { neededPapers, PAPERS } from './facts/papers';
import { listed } from './facts/words';
import type { Rule } from './rule';

/** A hazard that the model does not carry, and no dated paper says how it is met. */
export const rule: Rule = {
  id: 'paper-missing',
  title: 'No paper says how a hazard is met that the model does not carry',
  why: 'What is not simulated still kills; here only what people have done and written down can answer for it.',
  source: 'The hazards are those of the catalogue; what is asked and how long it counts: common practice, no source',
  grade: 'low',
  remedy: 'state-papers',
  check: (context) =>
    neededPapers(context).flatMap(({ kind, hazards, on, isValid }) => {
      if (isValid) return [];
      const { asks, without, days } = PAPERS[kind];
      return [
        {
          cause: listed(hazards.map(({ title }) => title)),
          consequence: without,
          figures: [
            {
              name: 'asked for',
              value: `a paper about ${kind === 'make-up-tests' ? 'make-up tests' : kind.replaceAll('-', ' ')}: ${asks}`,
            },
            { name: 'counts for', value: `${days} days` },
            { name: 'last', value: on ?? 'none' },
          ],
        },
      ];
    }),
  passing: () => example(),
  failing: () =>
    example(withSystem(({ papers }) => ({ papers: papers?.filter(({ kind }) => kind !== 'order-of-rounds') }))),
};
