import { example, withPlan } from './example/example';
import { byDevice, ofType } from './facts/equipment';
import type { Rule } from './rule';

/** Chiller, top-off or supply that is not switched off when its own sensor gives nothing usable. */
export const rule: Rule = {
  id: 'unsafe-when-blind',
  title: 'A chiller, top-off or supply is not switched off when its sensor gives nothing usable',
  why: 'Blind, it goes on as it was: cooling to the limit of its power, or filling until something is empty or full.',
  source: 'Own sensor lost: chiller, top-off and fills off; common practice, no source',
  grade: 'medium',
  remedy: 'lost-sensing',
  check: (context) =>
    ofType(context, 'chiller', 'top-off', 'supply').flatMap(({ name, plan }) => {
      const { lostSensing, regulation } = plan;
      if (regulation.kind !== 'thermostat' && regulation.kind !== 'level') return [];
      if (lostSensing?.action === 'off' && byDevice(lostSensing.by)) return [];
      const done = lostSensing ? `${lostSensing.action}, by ${lostSensing.by}` : 'not said: it holds its last command';
      return [
        {
          cause: name,
          consequence: 'It may go on with nothing that measures what it does.',
          figures: [{ name: 'on lost sensing', value: done }],
        },
      ];
    }),
  passing: () => example(),
  failing: () => example(withPlan('top-off', () => ({ lostSensing: { action: 'hold', by: 'controller' } }))),
};
