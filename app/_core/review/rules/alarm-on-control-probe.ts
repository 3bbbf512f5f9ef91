import { example, withSystem } from './example/example';
import { alarmsOn } from './facts/alarms';
import { ofType, thermostatOf } from './facts/equipment';
import type { Rule } from './rule';

/** Every temperature alarm listens to a probe that also regulates. */
export const rule: Rule = {
  id: 'alarm-on-control-probe',
  title: 'The temperature alarms listen to the probe that controls',
  why: 'A probe that lies makes the harm and hides it: what heats by it is told that all is well, and so is the alarm.',
  source: 'One box both controls and alarms; common practice, no source',
  grade: 'medium',
  remedy: 'own-alarm-probe',
  check: (context) => {
    // A probe that another one votes with is not alone in what it does.
    const alone = context.system.equipment.flatMap((one) => {
      const probes = thermostatOf(one)?.sensors ?? [];
      return probes.length === 1 ? probes : [];
    });
    const regulating = new Set(alone);
    const alarms = alarmsOn(context, 'temperature');
    if (alarms.length === 0 || alarms.some(({ sensor }) => !regulating.has(sensor.key))) return [];
    // Heaters with a cut-out have something else that the probe cannot fool.
    const guarded = ofType(context, 'heater').every(({ plan }) =>
      plan.cutOuts.some((c) => c.quantity === 'temperature'),
    );
    return [...new Map(alarms.map(({ sensor }) => [sensor.key, sensor])).values()].map((sensor) => ({
      cause: sensor.name,
      consequence: 'When it reads wrong, no alarm of the temperature tells.',
      ...(guarded ? { grade: 'low' as const } : {}),
      figures: [{ name: 'alarms on it', value: `${alarms.filter((one) => one.sensor.key === sensor.key).length}` }],
    }));
  },
  passing: () => example(),
  failing: () =>
    example(
      withSystem(({ alarms }) => ({
        alarms: alarms.map((one) =>
          one.on.kind === 'sensor' && one.on.sensor === 'display-temperature'
            ? { ...one, on: { ...one.on, sensor: 'sump-temperature' } }
            : one,
        ),
      })),
    ),
};
