import { resolveSystem } from '../../../equipment/resolve';
import type { ResolvedSystem, ResolvedTank } from '../../../equipment/resolved';
import { density } from '../../../water/density';
import { heatCapacity } from '../../../water/heat-capacity';
import type { RuleContext } from '../rule';
import { ofType } from './equipment';

/**
 * The system in numbers, gaps filled as far as a default can be defended; what nobody knows is NaN. Nothing is
 * simulated.
 */
export function numbersOf({ facility, system }: RuleContext): ResolvedSystem {
  return resolveSystem(facility, system, 'nominal');
}

/**
 * Keys of the tanks whose water is one with that of a tank: all that the return joins, else the tank alone.
 * @param tank key of the tank asked about
 */
export function joinedWith(context: RuleContext, resolved: ResolvedSystem, tank: string): string[] {
  const isJoined = (one: ResolvedTank) => one.tank.role === 'sump' || one.share > 0;
  const joined = resolved.tanks.filter(isJoined).map((one) => one.tank.key);
  const flows = ofType(context, 'return-pump').length > 0;
  return flows && joined.includes(tank) ? joined : [tank];
}

/** Water of several tanks at their running levels, m³; NaN when one is unknown. */
export function volumeOf(resolved: ResolvedSystem, tanks: readonly string[]): number {
  const theirs = resolved.tanks.filter(({ tank }) => tanks.includes(tank.key));
  return theirs.reduce((sum, { volume }) => sum + volume, 0);
}

/**
 * Heat that warms so much of the system's water by 1 K.
 * @param volume m³
 * @param temperature °C
 * @returns J/K
 */
export function heatPerKelvin({ salinity }: ResolvedSystem, volume: number, temperature: number): number {
  return density(temperature, salinity) * heatCapacity(temperature, salinity) * volume;
}
