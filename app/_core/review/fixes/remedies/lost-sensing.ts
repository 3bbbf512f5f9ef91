import { withPlan } from '../edit';
import type { Remedy } from '../remedy';

/** Off when its probe gives nothing usable. */
export const remedy: Remedy = {
  id: 'lost-sensing',
  changes: 'water',
  places: (_, { equipment }) =>
    equipment
      .filter(
        ({ plan: { regulation, lostSensing } }) =>
          regulation.kind === 'thermostat' && (lostSensing?.action !== 'off' || lostSensing.by === 'person'),
      )
      .map(({ key, name }) => ({ key, title: `${name} off when its probe gives nothing usable` })),
  apply: (facility, system, { key }) =>
    withPlan(facility, system, key, () => ({ lostSensing: { action: 'off', by: 'controller' } })),
};
