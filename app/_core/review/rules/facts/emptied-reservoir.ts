import type { ResolvedSystem } from '../../../equipment/resolved';
import type { Equipment } from '../../../facility/system';
import { dilutionOverflowing } from '../../../water/dilution-overflowing';
import { dilutionRising } from '../../../water/dilution-rising';
import type { RuleContext } from '../rule';
import { joinedWith, volumeOf } from './water';

/** What becomes of the water when all that a top-off can give runs in at once. */
export interface Emptied {
  /** m³ of fresh water; Infinity from the mains. */
  added: number;
  /** m³ of the system before. */
  volume: number;
  salinity: number;
}

/**
 * Salinity after the whole content of a top-off's reservoir has run in: rising as long as the sump (without one, the
 * tank it fills) has room up to its rim, then overflowing.
 * @returns null when the source is not described
 */
export function emptied(context: RuleContext, numbers: ResolvedSystem, topOff: Equipment): Emptied | null {
  const joined = joinedWith(context, numbers, topOff.tank);
  const volume = volumeOf(numbers, joined);
  if (topOff.source === 'mains') return { added: Number.POSITIVE_INFINITY, volume, salinity: 0 };
  const reservoir = numbers.tanks.find(({ tank }) => tank.key === topOff.source);
  const filled = numbers.tanks.find(({ tank }) => tank.key === topOff.tank);
  if (reservoir === undefined || filled === undefined) return null;
  const fits = Math.min(reservoir.volume, filled.rim * filled.surface);
  const risen = dilutionRising(numbers.salinity, 0, volume, fits);
  const salinity = dilutionOverflowing(risen, 0, volume + fits, reservoir.volume - fits);
  return { added: reservoir.volume, volume, salinity };
}
