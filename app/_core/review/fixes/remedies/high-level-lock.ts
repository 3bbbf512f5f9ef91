import { fittedSensor, placesOf, withLock } from '../edit';
import type { Remedy } from '../remedy';

/** mm above the running level at which a second switch takes the power. Common practice, no source. */
const ABOVE_MM = 20;

/** A second level switch of another kind above the first, in series with the top-off. */
export const remedy: Remedy = {
  id: 'high-level-lock',
  changes: 'water',
  places: (_, system) =>
    placesOf(
      system,
      'top-off',
      'A second level switch in series with',
      ({ plan }) => !plan.interlocks.some(({ when }) => when.kind === 'sensor' && when.above !== undefined),
    ),
  apply: (facility, system, { key }) => {
    const tank = system.equipment.find((e) => e.key === key)?.tank ?? '';
    const float = { ...fittedSensor(system, 'level', { tank }), key: `proposed-float-${key}` };
    const when = { kind: 'sensor', sensor: float.key, above: ABOVE_MM } as const;
    return withLock(facility, system, key, { when, then: 'off', by: 'hard-wired' }, float);
  },
};
