import { example, withSystem } from './example/example';
import { isOffIn } from './facts/equipment';
import { listed } from './facts/words';
import type { Rule } from './rule';

/**
 * A feeding pause that lasts until somebody thinks of it. Not asked of water change, backwash or treatment: with hands
 * in the water or work on a valve, a state must not end by itself.
 */
export const rule: Rule = {
  id: 'pause-ended-by-person',
  title: 'Nothing but a person ends the feeding pause',
  why: 'Called away in the middle of a meal, somebody forgets it, and everything paused stays off for the night.',
  source: 'A filter left off for twelve hours after feeding (aquariumadvice.com, thread 187799)',
  grade: 'medium',
  remedy: 'pause-timer',
  check: ({ system }) =>
    system.states.flatMap(({ name, endsBy, endSafeguard }) => {
      const paused = system.equipment.filter((one) => isOffIn(one, name)).map((one) => one.name);
      if (name !== 'feeding' || endsBy !== 'person' || endSafeguard !== undefined || paused.length === 0) return [];
      const consequence = `Until somebody ends it, ${listed(paused)} stay${paused.length === 1 ? 's' : ''} off.`;
      return [{ cause: 'Feeding', consequence, figures: [{ name: 'ended by', value: 'a person' }] }];
    }),
  passing: () => example(),
  failing: () =>
    example(
      withSystem(({ states }) => ({
        states: states.map((one) =>
          one.name === 'feeding' ? { ...one, endsBy: 'person', endSafeguard: undefined } : one,
        ),
      })),
    ),
};
