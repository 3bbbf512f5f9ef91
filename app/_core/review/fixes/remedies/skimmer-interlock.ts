import { fittedSensor, placesOf, withLock } from '../edit';
import type { Remedy } from '../remedy';

/** Part of the rise at which it floods, at which it is stopped. Common practice, no source. */
const PART = 0.6;

/** A skimmer that stops when the level it stands in rises. */
export const remedy: Remedy = {
  id: 'skimmer-interlock',
  changes: 'water',
  places: (_, system) =>
    placesOf(
      system,
      'skimmer',
      'A high level stops',
      (e) =>
        Boolean(e.floodsAboveMm?.value) &&
        !e.plan.interlocks.some(({ when }) => when.kind === 'sensor' && when.above !== undefined),
    ),
  apply: (facility, system, { key }) => {
    const skims = system.equipment.find((e) => e.key === key);
    if (!skims?.floodsAboveMm?.value) return facility;
    const float = { ...fittedSensor(system, 'level', { tank: skims.tank }), key: `proposed-float-${key}` };
    const when = { kind: 'sensor', sensor: float.key, above: PART * skims.floodsAboveMm.value } as const;
    return withLock(facility, system, key, { when, then: 'off', by: 'controller' }, float);
  },
};
