import { example, withPlan } from './example/example';
import { byDevice, ofType, thermostatOf } from './facts/equipment';
import type { Rule } from './rule';

/** A heater whose thermostat has lost its sensor and is not switched off for it. */
export const rule: Rule = {
  id: 'heater-on-when-blind',
  title: 'A heater is not switched off when its sensor gives nothing usable',
  why: 'A cable pulled out or a dead probe then leaves the heater as it was, perhaps on, with nothing to end it.',
  source: 'Own sensor lost: a heater off; common practice, no source',
  grade: 'medium',
  remedy: 'lost-sensing',
  check: (context) =>
    ofType(context, 'heater').flatMap((heater) => {
      const { lostSensing } = heater.plan;
      const isSafe = lostSensing?.action === 'off' && byDevice(lostSensing.by);
      if (thermostatOf(heater) === null || isSafe) return [];
      const done = lostSensing ? `${lostSensing.action}, by ${lostSensing.by}` : 'not said: it holds its last command';
      const consequence =
        lostSensing?.action === 'off'
          ? 'Its plan leaves the switching off to a person, who has to notice first.'
          : 'It may go on heating with nothing that measures the water.';
      return [{ cause: heater.name, consequence, figures: [{ name: 'on lost sensing', value: done }] }];
    }),
  passing: () => example(),
  failing: () => example(withPlan('heater-1', () => ({ lostSensing: { action: 'hold', by: 'controller' } }))),
};
