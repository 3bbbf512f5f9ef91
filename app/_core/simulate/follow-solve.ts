import { FOLLOWERS, type Follower, type Layout } from './layout';
import { OXYGEN, SALT, STRIDE, TEMPERATURE } from './plant';
import type { Star } from './star';

/**
 * Rows of the Jacobian of one follower, a number for each node: by the node's own volume, temperature, salt and oxygen, by the follower
 * before it, by itself; and the sump's row by each tank's volume. What the flows of the star carry is the same as for oxygen.
 */
export interface FollowerSlopes {
  name: Follower;
  /** Its first number in the state vector, and that of the follower it depends on (−1: none). */
  from: number;
  priorFrom: number;
  V: Float64Array;
  T: Float64Array;
  M: Float64Array;
  C: Float64Array;
  prior: Float64Array;
  own: Float64Array;
  toV: Float64Array;
  /** Inverse pivots, as of oxygen. */
  pivot: Float64Array;
}

/** On which follower another depends directly. */
const PRIOR: Partial<Record<Follower, Follower>> = { alkalinity: 'ammonia', carbon: 'alkalinity' };

/** Empty rows for the followers that a layout carries, in the order in which they are solved. */
export function emptyFollowerSlopes(nodes: number, layout: Layout): FollowerSlopes[] {
  return FOLLOWERS.filter((name) => layout.followers[name] >= 0).map((name) => {
    const prior = PRIOR[name];
    const column = () => new Float64Array(nodes);
    return {
      name,
      from: layout.followers[name],
      priorFrom: prior ? layout.followers[prior] : -1,
      V: column(),
      T: column(),
      M: column(),
      C: column(),
      prior: column(),
      own: column(),
      toV: column(),
      pivot: column(),
    };
  });
}

/** Invert the pivots of (shift·I − J), every tank eliminated into the sump. */
export function factorFollower(row: FollowerSlopes, star: Star, shift: number): void {
  const { hub, nodes } = star;
  let into = 0;
  for (let k = 0; k < nodes; k++) {
    if (k === hub) continue;
    const pivot = 1 / (shift - (row.own[k] as number));
    row.pivot[k] = pivot;
    if (hub >= 0) into += (star.toCC[k] as number) * (star.fromCC[k] as number) * pivot;
  }
  if (hub >= 0) row.pivot[hub] = 1 / (shift - (row.own[hub] as number) - into);
}

/** Solve one follower's rows; volume, temperature, salt, oxygen and the follower before it are solved already. */
export function solveFollower(row: FollowerSlopes, star: Star, r: Float64Array, u: Float64Array): void {
  const { hub, nodes } = star;
  let there = 0;
  if (hub >= 0) {
    let sum = rightOf(row, hub, r, u);
    for (let k = 0; k < nodes; k++) {
      if (k === hub) continue;
      sum +=
        (row.toV[k] as number) * (u[STRIDE * k] as number) +
        (star.toCC[k] as number) * rightOf(row, k, r, u) * (row.pivot[k] as number);
    }
    there = sum * (row.pivot[hub] as number);
    u[row.from + hub] = there;
  }
  for (let k = 0; k < nodes; k++) {
    if (k === hub) continue;
    u[row.from + k] = (rightOf(row, k, r, u) + (star.fromCC[k] as number) * there) * (row.pivot[k] as number);
  }
}

/** The right-hand side with all that is known brought over; `u` is another vector than `r`. */
function rightOf(row: FollowerSlopes, k: number, r: Float64Array, u: Float64Array): number {
  const at = STRIDE * k;
  let right =
    (r[row.from + k] as number) +
    (row.V[k] as number) * (u[at] as number) +
    (row.T[k] as number) * (u[at + TEMPERATURE] as number) +
    (row.M[k] as number) * (u[at + SALT] as number) +
    (row.C[k] as number) * (u[at + OXYGEN] as number);
  if (row.priorFrom >= 0) right += (row.prior[k] as number) * (u[row.priorFrom + k] as number);
  return right;
}
