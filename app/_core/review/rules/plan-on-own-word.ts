import { example, withPlan } from './example/example';
import type { Rule } from './rule';

/** A plan that nobody but its author has read. */
export const rule: Rule = {
  id: 'plan-on-own-word',
  title: 'A plan is in force on the word of its author alone',
  why: 'A mistake in a plan is seen by somebody else, hardly ever by the one who made it.',
  source: 'Independent check of what safety leans on (four eyes); common practice, no source',
  grade: 'low',
  remedy: 'second-reader',
  check: ({ system }) =>
    system.equipment.flatMap(({ name, plan: { ownWord, cutOuts, interlocks } }) =>
      ownWord === undefined
        ? []
        : [
            {
              cause: name,
              consequence: `Whoever wrote its plan put it into force as well. Reason given: ${ownWord.why.trim().replace(/[\s.]+$/, '')}.`,
              figures: [{ name: 'lines that protect', value: `${cutOuts.length + interlocks.length}` }],
            },
          ],
    ),
  passing: () => example(),
  failing: () => example(withPlan('heater-1', () => ({ ownWord: { why: 'the only keeper of this site' } }))),
};
