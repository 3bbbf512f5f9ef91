import { changed, example, withMore, withSystem } from './example/example';
import { CO2, PH_PROBE } from './example/dosed';
import { byDevice, ofType } from './facts/equipment';
import type { Rule } from './rule';

/** Carbon dioxide that no pH in the tank stops. */
export const rule: Rule = {
  id: 'co2-without-ph-stop',
  title: 'No low pH stops the carbon dioxide',
  why: 'A valve that stays open goes on until the bottle is empty; fish suffocate in water full of oxygen.',
  source: 'Low-pH stop on the tank probe; common practice, no source',
  grade: 'medium',
  remedy: 'ph-stop',
  check: (context) => {
    const probes = new Set(context.system.sensors.filter((one) => one.quantity === 'ph').map(({ key }) => key));
    return ofType(context, 'co2')
      .filter(
        ({ plan }) =>
          !plan.interlocks.some(
            ({ when, then, by }) =>
              when.kind === 'sensor' &&
              when.below !== undefined &&
              probes.has(when.sensor) &&
              then === 'off' &&
              byDevice(by),
          ),
      )
      .map(({ name }) => ({
        cause: name,
        consequence: 'Nothing that measures the tank closes it.',
        figures: [{ name: 'stopped by low pH', value: 'no' }],
      }));
  },
  passing: () => example(withMore(CO2), PH_PROBE),
  failing: () =>
    example(
      withMore(CO2),
      PH_PROBE,
      withSystem(({ equipment }) => ({
        equipment: changed(equipment, 'co2', { plan: { ...CO2.plan, interlocks: CO2.plan.interlocks.slice(0, 1) } }),
      })),
    ),
};
