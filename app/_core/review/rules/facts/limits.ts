import type { LimitQuantity, ToleranceProfile } from '../../../facility/stock';
import { defaultProfile } from '../../../facility/profiles';
import type { RuleContext } from '../rule';

/** Tolerance profiles of the animals of a system; of a system without animals, the default one of its kind. */
export function profilesOf({ system, profileOf }: RuleContext): ToleranceProfile[] {
  const found = new Map(system.stock.map((stock) => [profileOf(stock).key, profileOf(stock)]));
  return found.size > 0 ? [...found.values()] : [defaultProfile(system.kind)];
}

/**
 * The limit of harm that is reached first on a side, over all animals of the system.
 * @returns in the limit's own unit; null when no profile sets one
 */
export function strictest(context: RuleContext, quantity: LimitQuantity, side: 'above' | 'below'): number | null {
  const limits = profilesOf(context).flatMap((profile) => profile.limits.filter((one) => one.quantity === quantity));
  const values = limits.map((one) => one[side]).filter((value) => value !== undefined);
  if (values.length === 0) return null;
  return side === 'above' ? Math.min(...values) : Math.max(...values);
}
