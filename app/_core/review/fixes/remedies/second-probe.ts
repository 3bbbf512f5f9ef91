import { fittedSensor, withPlan, withSystem } from '../edit';
import type { Remedy } from '../remedy';

/** A second probe with a say in the regulation: of a heater's two the warmer counts, of a chiller's the colder. */
export const remedy: Remedy = {
  id: 'second-probe',
  changes: 'water',
  places: (_, { equipment }) =>
    equipment
      .filter(
        ({ plan: { regulation: r } }) => r.kind === 'thermostat' && r.sensors.length === 1 && r.by !== 'hard-wired',
      )
      .map(({ key, name }) => ({ key, title: `A second probe for ${name}` })),
  apply: (facility, system, { key }) => {
    const ruled = system.equipment.find((e) => e.key === key);
    const regulation = ruled?.plan.regulation;
    if (!ruled || regulation?.kind !== 'thermostat') return facility;
    const beside = system.sensors.find((s) => s.key === regulation.sensors[0]);
    const probe = {
      ...fittedSensor(system, 'temperature', { tank: beside?.tank ?? ruled.tank }),
      key: `proposed-probe-${key}`,
    };
    const vote = ruled.type === 'heater' ? ('highest' as const) : ('lowest' as const);
    const more = { ...system, sensors: [...system.sensors, probe] };
    return withPlan(withSystem(facility, more), more, key, () => ({
      regulation: { ...regulation, sensors: [...regulation.sensors, probe.key], vote },
    }));
  },
};
