import { bandOf, PROPOSED, placesOf, withPlan } from '../edit';
import type { Remedy } from '../remedy';

/** K above the upper end of the band at which a cut-out is set. Common practice, no source. */
const ABOVE_K = 2;

/** An independent high cut-out with its own probe, reset by hand. */
export const remedy: Remedy = {
  id: 'cut-out',
  changes: 'water',
  places: (_, system) =>
    placesOf(
      system,
      'heater',
      'A high cut-out on',
      (e) => bandOf(e) !== null && !e.plan.cutOuts.some((c) => c.quantity === 'temperature' && c.above !== undefined),
    ),
  apply: (facility, system, { key }) => {
    const heats = system.equipment.find((e) => e.key === key);
    const band = heats && bandOf(heats);
    if (!band) return facility;
    const line = { quantity: 'temperature', tank: heats.tank, above: band.highC + ABOVE_K, reset: 'manual' } as const;
    return withPlan(facility, system, key, ({ cutOuts }) => ({
      cutOuts: [...cutOuts, { ...line, safeguard: PROPOSED }],
    }));
  },
};
