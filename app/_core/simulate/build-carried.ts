import type { ResolvedSystem } from '../equipment/resolved';
import type { Upset } from '../faults/upset';
import type { Snapshot } from './build';
import { type Follower, FOLLOWERS } from './layout';

/**
 * What is dissolved and has to be followed in a run: what matters to the system anyway, what an upset brings in, and what the water it begins
 * with already holds.
 */
export function carriedIn(resolved: ResolvedSystem, upset: Upset, snapshot: Snapshot | null): ReadonlySet<Follower> {
  const carried = new Set(resolved.chemistry.carried);
  const brought = [upset.newWater, ...upset.brings.values()].some((water) => (water?.oxidantMgL ?? 0) > 0);
  if (brought || upset.mainsOxidantPasses !== null || upset.hoses.size > 0) carried.add('oxidant');
  if (upset.feedDumpedG > 0) carried.add('ammonia');
  for (const name of FOLLOWERS) if (snapshot && snapshot.layout.followers[name] >= 0) carried.add(name);
  return carried;
}
