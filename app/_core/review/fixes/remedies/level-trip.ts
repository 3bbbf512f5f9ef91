import { PROPOSED, placesOf, sumpOf, withPlan } from '../edit';
import type { Remedy } from '../remedy';

/** Part of the way to drawing air at which the pump is stopped. Common practice, no source. */
const PART = 0.6;

/** A low level in the sump stops the return pump by hardware. */
export const remedy: Remedy = {
  id: 'level-trip',
  changes: 'water',
  places: (_, system) =>
    sumpOf(system)?.pumpDryMm?.value
      ? placesOf(
          system,
          'return-pump',
          'A low-level trip on',
          ({ plan }) => !plan.cutOuts.some((c) => c.quantity === 'level'),
        )
      : [],
  apply: (facility, system, { key }) => {
    const sump = sumpOf(system);
    if (!sump?.pumpDryMm?.value) return facility;
    const line = { quantity: 'level', tank: sump.key, below: -PART * sump.pumpDryMm.value, reset: 'manual' } as const;
    return withPlan(facility, system, key, ({ cutOuts }) => ({
      cutOuts: [...cutOuts, { ...line, safeguard: PROPOSED }],
    }));
  },
};
