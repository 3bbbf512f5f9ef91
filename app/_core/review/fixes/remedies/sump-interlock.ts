import { fittedSensor, sumpOf, withLock } from '../edit';
import type { Remedy } from '../remedy';

/** What stands in the sump, heats, cools or fills it, goes off when the return's flow is lost. */
export const remedy: Remedy = {
  id: 'sump-interlock',
  changes: 'water',
  places: (_, system) => {
    const sump = sumpOf(system)?.key;
    const pumped = system.equipment.some(({ type }) => type === 'return-pump');
    return system.equipment
      .filter(({ type, tank }) => pumped && tank === sump && ['heater', 'chiller', 'top-off', 'skimmer'].includes(type))
      .filter(({ plan }) => !plan.interlocks.some(({ when }) => when.kind === 'return-lost'))
      .map(({ key, name }) => ({ key, title: `${name} off when the return's flow is lost` }));
  },
  apply: (facility, system, { key }) => {
    const isThere = system.sensors.some(({ quantity }) => quantity === 'flow');
    const fitted = isThere ? undefined : fittedSensor(system, 'flow', { tank: sumpOf(system)?.key ?? '' });
    const when = { kind: 'return-lost', provedBy: 'flow' } as const;
    return withLock(facility, system, key, { when, then: 'off', by: 'controller' }, fitted);
  },
};
