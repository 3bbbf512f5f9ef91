import { example, withMore } from './example/example';
import { OZONE, REDOX_PROBES } from './example/dosed';
import { byDevice, ofType } from './facts/equipment';
import type { Rule } from './rule';

/** Ozone that fewer than two probes can stop. */
export const rule: Rule = {
  id: 'ozone-on-one-probe',
  title: 'Fewer than two probes can stop the ozone',
  why: 'The one probe that controls it fouls or is driven by a stray current, reads low, and asks for more and more.',
  source:
    'Ozone: two probes of different make and place; a meter fault raised the dose and three sharks died (deeperblue.com, aquarium sharks die after equipment failure)',
  grade: 'medium',
  remedy: 'ozone-two-probes',
  check: (context) =>
    ofType(context, 'ozone').flatMap(({ name, plan }) => {
      const stops = plan.interlocks.flatMap(({ when, then, by }) =>
        when.kind === 'sensor' && when.above !== undefined && then === 'off' && byDevice(by) ? [when.sensor] : [],
      );
      const probes = new Set(stops).size;
      if (probes >= 2) return [];
      return [
        {
          cause: name,
          consequence: probes === 0 ? 'Nothing that measures the water stops it.' : 'One probe alone stops it.',
          figures: [{ name: 'probes that stop it', value: `${probes}` }],
        },
      ];
    }),
  passing: () => example(withMore(OZONE), REDOX_PROBES),
  failing: () =>
    example(
      withMore({ ...OZONE, plan: { ...OZONE.plan, interlocks: OZONE.plan.interlocks.slice(0, 2) } }),
      REDOX_PROBES,
    ),
};
