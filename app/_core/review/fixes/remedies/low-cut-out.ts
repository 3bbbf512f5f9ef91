import { bandOf, PROPOSED, placesOf, withPlan } from '../edit';
import type { Remedy } from '../remedy';

/** K below the lower end of the band at which a cut-out is set. Common practice, no source. */
const BELOW_K = 2;

/** An independent low cut-out on a chiller. */
export const remedy: Remedy = {
  id: 'low-cut-out',
  changes: 'water',
  places: (_, system) =>
    placesOf(
      system,
      'chiller',
      'A low cut-out on',
      (e) => bandOf(e) !== null && !e.plan.cutOuts.some((c) => c.quantity === 'temperature' && c.below !== undefined),
    ),
  apply: (facility, system, { key }) => {
    const cools = system.equipment.find((e) => e.key === key);
    const band = cools && bandOf(cools);
    if (!band) return facility;
    const line = { quantity: 'temperature', tank: cools.tank, below: band.lowC - BELOW_K, reset: 'manual' } as const;
    return withPlan(facility, system, key, ({ cutOuts }) => ({
      cutOuts: [...cutOuts, { ...line, safeguard: PROPOSED }],
    }));
  },
};
