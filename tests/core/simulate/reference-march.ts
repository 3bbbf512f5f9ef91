import { createRequire } from 'node:module';
import { airAt } from '#core/simulate/air';
import { arrived, type March } from '#core/simulate/march';
import { ratesAt } from '#core/simulate/stepper';
import { pastThreshold, type Watch } from '#core/simulate/watch';
import { look } from '#core/simulate/watch-table';

type Interpolate = (component: number, t: number) => number;

interface OdexSolver {
  absoluteTolerance: number;
  relativeTolerance: number;
  maxSteps: number;
  initialStepSize: number;
  maxStepSize: number;
  denseOutput: boolean;
  solve(
    rate: (t: number, y: number[]) => number[],
    from: number,
    y: number[],
    to: number,
    out: (n: number, from: number, to: number, y: number[], interpolate: Interpolate) => boolean | undefined,
  ): { y: number[] };
}

// The package ships sources that do not compile under strict types, so it is loaded past the compiler.
const require = createRequire(import.meta.url);
const { Solver } = require('odex') as { Solver: new (n: number) => OdexSolver };

/** Points at which each step of the reference is looked at between its ends, so that no crossing hides in it. */
const LOOKS = 12;

/** Longest step of the reference, s. */
const LONGEST_S = 300;

interface Found {
  t: number;
  watch: Watch;
  x: Float64Array;
}

/**
 * The marching of a run by the reference ODE library (Hairer and Wanner's ODEX, package odex 2.0.4) instead of our own
 * integrator: extrapolation at the given tolerance, crossings by bisection of its dense output. It asks the laws themselves, not
 * the tables that stand in for them in a run of ours.
 */
export function referenceMarch(tolerance: number): (m: March, stop: number) => Watch | null {
  return (m, stop) => {
    if (m.world.t >= stop) return null;
    m.world.stepper.laws.exact = true;
    const found = integrate(m, stop, tolerance);
    if (found) arriveAt(m, found.t, found.x, found.watch);
    return found?.watch ?? null;
  };
}

function arriveAt(m: March, t: number, x: Float64Array, watch: Watch | null): void {
  const { world } = m;
  world.t = t;
  world.x = x;
  airAt(world.machine.room, world.stepper.clockS + t, world.hour, m.a.air);
  ratesAt(world.stepper, t, world.hour, x, world.stepper.f);
  look(world.table, x, m.a.air);
  arrived(m, watch);
}

function integrate(m: March, stop: number, tolerance: number): Found | null {
  const { world } = m;
  const size = world.machine.plant.size;
  const solver = new Solver(size);
  solver.absoluteTolerance = tolerance;
  solver.relativeTolerance = tolerance;
  solver.maxSteps = 10_000_000;
  solver.initialStepSize = Math.min(1, stop - world.t);
  // Where the water stands still its steps would grow until its trial states are no water any more.
  solver.maxStepSize = LONGEST_S;
  solver.denseOutput = true;
  const scratch = new Float64Array(size);
  const rates = new Float64Array(size);
  let found: Found | null = null;
  const rate = (t: number, y: number[]) => {
    scratch.set(y);
    ratesAt(world.stepper, t, world.hour, scratch, rates);
    return Array.from(rates);
  };
  solver.solve(rate, world.t, Array.from(world.x), stop, (n, from, to, y, interpolate) => {
    if (n <= 1 || to <= from) return undefined;
    found = crossingWithin(m, from, to, interpolate);
    if (found !== null) return false;
    // Every step of the library is kept, as every step of ours is.
    arriveAt(m, to, Float64Array.from(y), null);
    return undefined;
  });
  return found;
}

function crossingWithin(m: March, from: number, to: number, interpolate: Interpolate): Found | null {
  const { world } = m;
  const x = new Float64Array(world.machine.plant.size);
  const stateAt = (t: number) => {
    for (let i = 0; i < x.length; i++) x[i] = interpolate(i, t);
    airAt(world.machine.room, world.stepper.clockS + t, world.hour, m.b.air);
    return x;
  };
  for (let i = 1; i <= LOOKS; i++) {
    const t = from + ((to - from) * i) / LOOKS;
    stateAt(t);
    const over = world.machine.watches.filter((w) => pastThreshold(w, x, m.b.air) > 0);
    if (over.length === 0) continue;
    const first = over
      .map((watch) => ({ watch, t: bisect(watch, from + ((to - from) * (i - 1)) / LOOKS, t, stateAt, m) }))
      .sort((a, b) => a.t - b.t)[0];
    if (first) return { ...first, x: Float64Array.from(stateAt(first.t)) };
  }
  return null;
}

function bisect(w: Watch, from: number, to: number, stateAt: (t: number) => Float64Array, m: March): number {
  let low = from;
  let high = to;
  while (high - low > 1e-7) {
    const middle = (low + high) / 2;
    if (pastThreshold(w, stateAt(middle), m.b.air) > 0) high = middle;
    else low = middle;
  }
  return high;
}
