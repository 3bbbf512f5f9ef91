import { example, withPlan } from './example/example';
import { byDevice, thermostatOf } from './facts/equipment';
import { figure } from './facts/words';
import type { Rule } from './rule';

/** Heat or cold that a person is meant to switch by the thermometer. */
export const rule: Rule = {
  id: 'thermostat-by-person',
  title: 'A person is the thermostat',
  why: 'The review lets the plan regulate as written, and no person does that through a night.',
  source: 'Only what a device does counts as automatic (design rule of Holdfast)',
  grade: 'medium',
  remedy: 'thermostat-device',
  check: ({ system }) =>
    system.equipment.flatMap((one) => {
      const band = thermostatOf(one);
      if (band === null || byDevice(band.by)) return [];
      const consequence = 'It stays as it is until somebody reads the thermometer and switches it.';
      const figures = [figure('band from', band.lowC, '°C', 2), figure('band to', band.highC, '°C', 2)];
      return [{ cause: one.name, consequence, figures }];
    }),
  passing: () => example(),
  failing: () =>
    example(
      withPlan('heater-1', ({ regulation }) =>
        regulation.kind === 'thermostat' ? { regulation: { ...regulation, by: 'person' } } : {},
      ),
    ),
};
