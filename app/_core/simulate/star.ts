import { STRIDE } from './plant';

/**
 * The Jacobian of a star of nodes round a sump. Every tank couples only to the sump, and within a node salt depends on
 * volume, oxygen on everything, but not the other way round: so one factorisation costs a few dozen operations a tank.
 * Names: first letter the row (V, T, M salt, C oxygen), second the column; `from…` are a tank's rows by sump columns,
 * `to…` the sump's rows by a tank's columns. The sump's own entries sit at its index. Units follow the state vector, per s.
 */
export interface Star {
  nodes: number;
  hub: number;
  VV: Float64Array;
  VT: Float64Array;
  TV: Float64Array;
  TT: Float64Array;
  MV: Float64Array;
  MM: Float64Array;
  CV: Float64Array;
  CT: Float64Array;
  CM: Float64Array;
  CC: Float64Array;
  fromTT: Float64Array;
  fromMV: Float64Array;
  fromMM: Float64Array;
  fromCC: Float64Array;
  toVV: Float64Array;
  toTV: Float64Array;
  toTT: Float64Array;
  toMV: Float64Array;
  toMM: Float64Array;
  toCV: Float64Array;
  toCC: Float64Array;
  /** Row of the floor's water: by each node's volume. */
  floorV: Float64Array;
}

/** An empty Jacobian for `nodes` nodes. */
export function emptyStar(nodes: number, hub: number): Star {
  const column = () => new Float64Array(nodes);
  return {
    nodes,
    hub,
    VV: column(),
    VT: column(),
    TV: column(),
    TT: column(),
    MV: column(),
    MM: column(),
    CV: column(),
    CT: column(),
    CM: column(),
    CC: column(),
    fromTT: column(),
    fromMV: column(),
    fromMM: column(),
    fromCC: column(),
    toVV: column(),
    toTV: column(),
    toTT: column(),
    toMV: column(),
    toMM: column(),
    toCV: column(),
    toCC: column(),
    floorV: column(),
  };
}

/** A factorised (shift·I − J): what `solveStar` needs again and again within one step. */
export interface Factor {
  shift: number;
  /** Inverse of each node's own volume-temperature block, row by row. */
  inverse: Float64Array;
  /** Inverse of the sump's block after all tanks are eliminated, row by row. */
  hubInverse: Float64Array;
  /** Inverse pivots of salt and oxygen; the sump's are those left after all tanks are eliminated. */
  salt: Float64Array;
  oxygen: Float64Array;
}

/** An empty factorisation for `nodes` nodes. */
export function emptyFactor(nodes: number): Factor {
  return {
    shift: 0,
    inverse: new Float64Array(4 * nodes),
    hubInverse: new Float64Array(4),
    salt: new Float64Array(nodes),
    oxygen: new Float64Array(nodes),
  };
}

function invert2(a: number, b: number, c: number, d: number, out: Float64Array, at: number): void {
  const det = a * d - b * c;
  out[at] = d / det;
  out[at + 1] = -b / det;
  out[at + 2] = -c / det;
  out[at + 3] = a / det;
}

/**
 * Factorise (shift·I − J) by eliminating every tank into the sump.
 * @param shift 1/s, > 0 (1/(γh) of the step)
 */
export function factorStar(star: Star, shift: number, factor: Factor): void {
  factor.shift = shift;
  const { hub, nodes } = star;
  let hVT = 0;
  let hTT = 0;
  let hM = 0;
  let hC = 0;
  for (let k = 0; k < nodes; k++) {
    if (k === hub) continue;
    const at = 4 * k;
    invert2(shift - at0(star.VV, k), -at0(star.VT, k), -at0(star.TV, k), shift - at0(star.TT, k), factor.inverse, at);
    factor.salt[k] = 1 / (shift - at0(star.MM, k));
    factor.oxygen[k] = 1 / (shift - at0(star.CC, k));
    if (hub < 0) continue;
    // Column of the tank's inverse that the sump's temperature drives.
    const u = at0(star.fromTT, k);
    const v1 = at0(factor.inverse, at + 1) * u;
    const t1 = at0(factor.inverse, at + 3) * u;
    hVT += at0(star.toVV, k) * v1;
    hTT += at0(star.toTV, k) * v1 + at0(star.toTT, k) * t1;
    hM += at0(star.toMM, k) * at0(star.fromMM, k) * at0(factor.salt, k);
    hC += at0(star.toCC, k) * at0(star.fromCC, k) * at0(factor.oxygen, k);
  }
  if (hub < 0) return;
  hVT = -at0(star.VT, hub) - hVT;
  hTT = shift - at0(star.TT, hub) - hTT;
  invert2(shift - at0(star.VV, hub), hVT, -at0(star.TV, hub), hTT, factor.hubInverse, 0);
  factor.salt[hub] = 1 / (shift - at0(star.MM, hub) - hM);
  factor.oxygen[hub] = 1 / (shift - at0(star.CC, hub) - hC);
}

// Typed arrays read as `number | undefined` under noUncheckedIndexedAccess; the loops above and below never leave them.
function at0(array: Float64Array, index: number): number {
  return array[index] as number;
}

/**
 * Solve (shift·I − J) u = r for a right-hand side laid out as the state vector, but for followers and probes; `u` may be `r` itself.
 * Reservoirs have no slope of their own, so their rows are divided by the shift; the floor's row follows the volumes.
 */
export function solveStar(star: Star, factor: Factor, reservoirs: number, r: Float64Array, u: Float64Array): void {
  solveVolumeTemperature(star, factor, r, u);
  solveSalt(star, factor, r, u);
  solveOxygen(star, factor, r, u);
  const end = STRIDE * star.nodes;
  for (let i = end; i < end + reservoirs; i++) u[i] = at0(r, i) / factor.shift;
  let floor = at0(r, end + reservoirs);
  for (let k = 0; k < star.nodes; k++) floor += at0(star.floorV, k) * at0(u, STRIDE * k);
  u[end + reservoirs] = floor / factor.shift;
}

function solveVolumeTemperature(star: Star, factor: Factor, r: Float64Array, u: Float64Array): void {
  const { hub, nodes } = star;
  const inv = factor.inverse;
  let hubT = 0;
  if (hub >= 0) {
    let rV = at0(r, STRIDE * hub);
    let rT = at0(r, STRIDE * hub + 1);
    for (let k = 0; k < nodes; k++) {
      if (k === hub) continue;
      const b = STRIDE * k;
      const v = at0(inv, 4 * k) * at0(r, b) + at0(inv, 4 * k + 1) * at0(r, b + 1);
      const t = at0(inv, 4 * k + 2) * at0(r, b) + at0(inv, 4 * k + 3) * at0(r, b + 1);
      rV += at0(star.toVV, k) * v;
      rT += at0(star.toTV, k) * v + at0(star.toTT, k) * t;
    }
    const h = factor.hubInverse;
    const hubV = at0(h, 0) * rV + at0(h, 1) * rT;
    hubT = at0(h, 2) * rV + at0(h, 3) * rT;
    u[STRIDE * hub] = hubV;
    u[STRIDE * hub + 1] = hubT;
  }
  for (let k = 0; k < nodes; k++) {
    if (k === hub) continue;
    const b = STRIDE * k;
    const rV = at0(r, b);
    const rT = at0(r, b + 1) + at0(star.fromTT, k) * hubT;
    u[b] = at0(inv, 4 * k) * rV + at0(inv, 4 * k + 1) * rT;
    u[b + 1] = at0(inv, 4 * k + 2) * rV + at0(inv, 4 * k + 3) * rT;
  }
}

function solveSalt(star: Star, factor: Factor, r: Float64Array, u: Float64Array): void {
  const { hub, nodes } = star;
  const hubV = hub >= 0 ? at0(u, STRIDE * hub) : 0;
  let hubM = 0;
  if (hub >= 0) {
    let sum = at0(r, STRIDE * hub + 2) + at0(star.MV, hub) * hubV;
    for (let k = 0; k < nodes; k++) {
      if (k === hub) continue;
      const b = STRIDE * k;
      const rM = at0(r, b + 2) + at0(star.MV, k) * at0(u, b) + at0(star.fromMV, k) * hubV;
      sum += at0(star.toMV, k) * at0(u, b) + at0(star.toMM, k) * rM * at0(factor.salt, k);
    }
    hubM = sum * at0(factor.salt, hub);
    u[STRIDE * hub + 2] = hubM;
  }
  for (let k = 0; k < nodes; k++) {
    if (k === hub) continue;
    const b = STRIDE * k;
    const rM = at0(r, b + 2) + at0(star.MV, k) * at0(u, b) + at0(star.fromMV, k) * hubV + at0(star.fromMM, k) * hubM;
    u[b + 2] = rM * at0(factor.salt, k);
  }
}

function solveOxygen(star: Star, factor: Factor, r: Float64Array, u: Float64Array): void {
  const { hub, nodes } = star;
  let hubC = 0;
  if (hub >= 0) {
    let sum = ownOxygen(star, hub, r, u);
    for (let k = 0; k < nodes; k++) {
      if (k === hub) continue;
      sum +=
        at0(star.toCV, k) * at0(u, STRIDE * k) + at0(star.toCC, k) * ownOxygen(star, k, r, u) * at0(factor.oxygen, k);
    }
    hubC = sum * at0(factor.oxygen, hub);
    u[STRIDE * hub + 3] = hubC;
  }
  for (let k = 0; k < nodes; k++) {
    if (k === hub) continue;
    u[STRIDE * k + 3] = (ownOxygen(star, k, r, u) + at0(star.fromCC, k) * hubC) * at0(factor.oxygen, k);
  }
}

function ownOxygen(star: Star, k: number, r: Float64Array, u: Float64Array): number {
  const b = STRIDE * k;
  return (
    at0(r, b + 3) + at0(star.CV, k) * at0(u, b) + at0(star.CT, k) * at0(u, b + 1) + at0(star.CM, k) * at0(u, b + 2)
  );
}
