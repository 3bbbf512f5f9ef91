import { defaultProfile } from '../../../facility/profiles';
import { fittedSensor, placesOf, withLock } from '../edit';
import type { Remedy } from '../remedy';

/** pH above the limit of harm at which the gas is stopped. Common practice, no source. */
const MARGIN = 0.3;

/** A pH probe that controls nothing else stops the carbon dioxide. */
export const remedy: Remedy = {
  id: 'ph-stop',
  changes: 'water',
  places: (_, system) =>
    placesOf(
      system,
      'co2',
      'A low-pH stop on',
      ({ plan }) => !plan.interlocks.some(({ when }) => when.kind === 'sensor'),
    ),
  apply: (facility, system, { key }) => {
    const tank = system.equipment.find((e) => e.key === key)?.tank ?? '';
    const probe = { ...fittedSensor(system, 'ph', { tank }), key: `proposed-ph-${key}` };
    const least =
      defaultProfile(system.kind).limits.find((l) => l.quantity === 'ph' && l.below !== undefined)?.below ?? 6;
    const when = { kind: 'sensor', sensor: probe.key, below: least + MARGIN } as const;
    return withLock(facility, system, key, { when, then: 'off', by: 'hard-wired' }, probe);
  },
};
