import type { Air } from './plant';
import type { Watch } from './watch';
import { gaugeSlope, readFully, readGauges, staysUnder } from './gauges';
import { REACH } from './reach';
import { past, type WatchTable } from './watch-table';

/** Position within a step, 0 to 1, at which the cubic through both ends (values and slopes × h) first rises through 0; −1 if it does not. */
export function firstRise(g0: number, g1: number, s0: number, s1: number): number {
  // Below at both ends and too flat to come up between them: the common case, left at once.
  if (!(g1 > 0) && Math.max(g0, g1) + REACH * (Math.max(0, s0) + Math.max(0, -s1)) <= 0) return -1;
  const top = summit(g0, g1, s0, s1);
  if (top > 0 && top < 1 && cubic(g0, g1, s0, s1, top) > 0) return bisect(g0, g1, s0, s1, 0, top);
  return g1 > 0 ? bisect(g0, g1, s0, s1, 0, 1) : -1;
}

function cubic(g0: number, g1: number, s0: number, s1: number, z: number): number {
  const y = 1 - z;
  return (1 + 2 * z) * y * y * g0 + z * y * y * s0 + z * z * (3 - 2 * z) * g1 - z * z * y * s1;
}

/** Where the cubic has its summit: the root of its slope a·z² + b·z + s0 at which that falls. Not between 0 and 1 if there is none. */
function summit(g0: number, g1: number, s0: number, s1: number): number {
  const d = g1 - g0;
  const a = 3 * (s0 + s1 - 2 * d);
  const b = 6 * d - 4 * s0 - 2 * s1;
  const q = Math.sqrt(b * b - 4 * a * s0);
  // Two forms of the same root, each exact where the other would lose digits.
  return b <= 0 ? (2 * s0) / (q - b) : (-b - q) / (2 * a);
}

/** Halvings: to some millionths of a second of the longest step, which whoever lands there makes exact. */
const HALVINGS = 32;

function bisect(g0: number, g1: number, s0: number, s1: number, from: number, to: number): number {
  let low = from;
  let high = to;
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (cubic(g0, g1, s0, s1, middle) > 0) high = middle;
    else low = middle;
  }
  return high;
}

/** A watch that changes within a step, and where. */
export interface Crossing {
  watch: Watch;
  /** 0 to 1 within the step. */
  at: number;
}

/** One end of a step: state, rates and air there. */
export interface End {
  x: Float64Array;
  f: Float64Array;
  air: Air;
}

/**
 * First change of any watch between two ends of a step of length h, s. The gauges' `from` must hold the readings at the
 * first end; their `to` receives those at the second. No threshold is stepped over: a value that goes beyond and comes back
 * within the step is found from its slopes.
 */
export function firstCrossing(table: WatchTable, h: number, a: End, b: End): Crossing | null {
  const { gauges } = table;
  const { from, to, low, high, rows, slopeFrom, slopeTo } = gauges;
  readGauges(gauges, b.x, b.air, to);
  slopeTo.fill(Number.NaN);
  let first: Crossing | null = null;
  for (let g = 0; g < gauges.count; g++) {
    if (staysUnder(gauges, g, h, a, b)) continue;
    const v0 = readFully(gauges, g, from[g] as number, a.x, a.air);
    const v1 = readFully(gauges, g, to[g] as number, b.x, b.air);
    const s0 = h * gaugeSlope(gauges, g, v0, slopeFrom, a.x, a.f, a.air);
    const s1 = h * gaugeSlope(gauges, g, v1, slopeTo, b.x, b.f, b.air);
    // Between the nearest thresholds on its whole way: the common case, left at once.
    const top = Math.max(v0, v1) + REACH * (Math.max(s0, 0) + (s1 < 0 ? -s1 : 0));
    const bottom = Math.min(v0, v1) - REACH * ((s0 < 0 ? -s0 : 0) + Math.max(s1, 0));
    if (top <= (high[g] as number) && bottom >= (low[g] as number)) continue;
    for (const row of rows[g] as Int32Array) {
      const scale = table.a[row] as number;
      if (scale === 0) continue;
      const at = firstRise(Math.min(past(table, row, v0), 0), past(table, row, v1), scale * s0, scale * s1);
      if (at >= 0 && (first === null || at < first.at)) first = { watch: table.watches[row] as Watch, at };
    }
  }
  return first;
}
