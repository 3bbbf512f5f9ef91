import { example, withEquipment } from './example/example';
import { ofType } from './facts/equipment';
import { listed } from './facts/words';
import type { Rule } from './rule';

/** Two heaters behind one relay board or controller. */
export const rule: Rule = {
  id: 'heaters-on-one-relay',
  title: 'Two heaters are switched by one relay board',
  why: 'They look like two and fail as one: a board that goes takes both, on or off.',
  source: 'Two heaters on one relay or thermostat; common practice, no source',
  grade: 'medium',
  remedy: 'own-thermostat',
  check: (context) => {
    const heaters = ofType(context, 'heater').filter((one) => one.relay !== undefined);
    return [...new Set(heaters.map(({ relay }) => relay ?? ''))].flatMap((relay) => {
      const names = heaters.filter((one) => one.relay === relay).map(({ name }) => name);
      if (names.length < 2) return [];
      const consequence = `${listed(names)} fail together when it does.`;
      return [{ cause: relay, consequence, figures: [{ name: 'heaters on it', value: `${names.length}` }] }];
    });
  },
  passing: () =>
    example(withEquipment('heater-1', { relay: 'Board 1' }), withEquipment('heater-2', { relay: 'Board 2' })),
  failing: () =>
    example(withEquipment('heater-1', { relay: 'Board 1' }), withEquipment('heater-2', { relay: 'Board 1' })),
};
