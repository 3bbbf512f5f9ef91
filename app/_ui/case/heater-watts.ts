import type { System } from '#core/facility/system';
import type { CaseThing } from '#core/review/result';

/** Rated power of the heater a fault case is about, W; null when it is about none, or nobody knows it. */
export function heaterWatts(system: System, thing: CaseThing): number | null {
  const equipment = thing.kind === 'equipment' ? system.equipment.find((e) => e.key === thing.key) : undefined;
  return equipment?.type === 'heater' ? (equipment.ratedW?.value ?? null) : null;
}
