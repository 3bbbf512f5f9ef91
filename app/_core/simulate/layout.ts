/** Dissolved substances that volume, temperature, salt and oxygen drive, but that do not act back on those. */
export const FOLLOWERS = ['ammonia', 'alkalinity', 'carbon', 'oxidant'] as const;
export type Follower = (typeof FOLLOWERS)[number];

/**
 * Where everything stands in the state vector: STRIDE numbers for each node, one volume (m³) for each reservoir, the water that
 * has left onto the floor (m³), then one concentration a node for each follower that is carried (total ammonia g/m³ as N,
 * alkalinity mol/m³ of charge, inorganic carbon mol/m³, oxidant g/m³ as Cl2), then what each lagging probe shows (its own unit).
 */
export interface Layout {
  reservoirs: number;
  floor: number;
  /** First number of each follower; −1 where it is not carried. */
  followers: Record<Follower, number>;
  probes: number;
  /** Keys of the lagging probes, in order. */
  lagging: readonly string[];
  size: number;
}

/**
 * The numbers of one state, laid out in another way: what both carry is taken over, the rest stays as it is.
 * @param nodes tanks and sump, the same in both
 */
export function carryOver(from: Layout, x: Float64Array, layout: Layout, nodes: number, into: Float64Array): void {
  into.set(x.subarray(0, from.floor + 1));
  for (const name of FOLLOWERS) {
    const [at, to] = [from.followers[name], layout.followers[name]];
    if (at >= 0 && to >= 0) into.set(x.subarray(at, at + nodes), to);
  }
  for (const [i, key] of layout.lagging.entries()) {
    const at = from.lagging.indexOf(key);
    if (at >= 0) into[layout.probes + i] = x[from.probes + at] as number;
  }
}

/**
 * A layout.
 * @param core numbers that the nodes take
 * @param carried followers that matter
 * @param lagging keys of the probes that lag
 */
export function layoutOf(
  core: number,
  nodes: number,
  reservoirs: number,
  carried: ReadonlySet<Follower> = new Set(),
  lagging: readonly string[] = [],
): Layout {
  const floor = core + reservoirs;
  const followers = { ammonia: -1, alkalinity: -1, carbon: -1, oxidant: -1 };
  let next = floor + 1;
  for (const name of FOLLOWERS) {
    if (!carried.has(name)) continue;
    followers[name] = next;
    next += nodes;
  }
  return { reservoirs: core, floor, followers, probes: next, lagging, size: next + lagging.length };
}

/** Whether two layouts put everything in the same place. */
export function sameLayout(a: Layout, b: Layout): boolean {
  return (
    a.size === b.size &&
    FOLLOWERS.every((name) => a.followers[name] === b.followers[name]) &&
    a.lagging.every((key, i) => key === b.lagging[i])
  );
}
