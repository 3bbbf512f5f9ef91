import { changed, example, withSystem } from './example/example';
import { moversOf } from './facts/feeds';
import { listed } from './facts/words';
import type { Rule } from './rule';

/** Everything that brings air or moves the water is switched by one board. */
export const rule: Rule = {
  id: 'all-on-one-relay',
  title: 'All air and all movement of the water are switched by one relay board',
  why: 'One board or controller that goes stops them all at once, whatever circuits they hang on.',
  source: 'Common-cause list, the same relay; common practice, no source',
  grade: 'high',
  remedy: 'split-relay',
  check: (context) => {
    const movers = moversOf(context);
    const [first] = movers;
    if (movers.length < 2 || first?.relay === undefined) return [];
    if (movers.some(({ relay }) => relay !== first.relay)) return [];
    const consequence = `${listed(movers.map(({ name }) => name))} stop together when it fails.`;
    return [{ cause: first.relay, consequence, figures: [{ name: 'hang on it', value: `${movers.length}` }] }];
  },
  passing: () =>
    example(withSystem(({ equipment }) => ({ equipment: changed(equipment, 'return', { relay: 'Board 1' }) }))),
  failing: () =>
    example(
      withSystem(({ equipment }) => ({
        equipment: equipment.map((one) => (one.type === 'heater' ? one : { ...one, relay: 'Board 1' })),
      })),
    ),
};
