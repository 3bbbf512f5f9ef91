import { example, withPlan } from './example/example';
import { inSump, ofType, stopsWithoutFlow } from './facts/equipment';
import type { Rule } from './rule';

/** A heater in the sump that goes on when the return has stopped. Never asked of air, biofilter or circulation. */
export const rule: Rule = {
  id: 'sump-heater-without-interlock',
  title: 'A heater in the sump is not switched off by a device when the return stops or the level is wrong',
  why: 'In still water it heats the sump alone whatever the tanks need, may stand bare, and sends a hot slug when the pump starts again.',
  source: 'Return lost: a heater in the sump off; common practice, no source',
  grade: 'medium',
  remedy: 'sump-interlock',
  check: (context) =>
    ofType(context, 'heater').flatMap((heater) => {
      if (!inSump(context, heater) || stopsWithoutFlow(context, heater)) return [];
      const byPerson = heater.plan.interlocks.some(({ by }) => by === 'person');
      const consequence = byPerson
        ? 'Its plan has a person do it, who has to notice first: nothing stops it by itself.'
        : 'It goes on heating a sump that nothing flows through.';
      return [{ cause: heater.name, consequence, figures: [{ name: 'interlock by a device', value: 'none' }] }];
    }),
  passing: () =>
    example(
      withPlan('heater-1', (plan) => ({
        interlocks: plan.interlocks.map((line) => ({
          ...line,
          when: { kind: 'sensor', sensor: 'sump-level', below: -60 },
        })),
      })),
    ),
  failing: () => example(withPlan('heater-1', () => ({ interlocks: [] }))),
};
