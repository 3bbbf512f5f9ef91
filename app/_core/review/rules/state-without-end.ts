import { example, withState, withSystem } from './example/example';
import type { Rule } from './rule';

/** A state that takes protection away and has no length. */
export const rule: Rule = {
  id: 'state-without-end',
  title: 'A state is given no length',
  why: 'A state that takes protection away and that nobody expects to be over is forgotten by the next shift.',
  source:
    'A valve not reopened when the power was back: six hours until somebody looked, 15 sharks dead (forums.reefcentral.com, thread 900281)',
  grade: 'low',
  remedy: 'state-length',
  check: ({ system }) =>
    system.states.flatMap(({ name, lastsMin, endsBy }) =>
      lastsMin === undefined && name !== 'night'
        ? [
            {
              cause: name.replace('-', ' '),
              consequence: 'Nobody can tell when it is overdue.',
              figures: [{ name: 'ended by', value: endsBy === 'person' ? 'a person' : `a ${endsBy} line` }],
            },
          ]
        : [],
    ),
  passing: () => example(withState('backwash')),
  failing: () =>
    example(
      withState('backwash'),
      withSystem(({ states }) => ({
        states: states.map((one) => (one.name === 'backwash' ? { ...one, lastsMin: undefined } : one)),
      })),
    ),
};
