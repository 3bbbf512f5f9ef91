import { createRequire } from 'node:module';

interface OdexSolver {
  absoluteTolerance: number;
  relativeTolerance: number;
  maxSteps: number;
  solve(rate: (t: number, y: number[]) => number[], from: number, y: number[], to: number): { y: number[] };
}

// The package ships sources that do not compile under strict types, so it is loaded past the compiler.
const require = createRequire(import.meta.url);
const { Solver } = require('odex') as { Solver: new (n: number) => OdexSolver };

/** The value at `to` of dy/dt = rate(y), by the reference ODE library. */
export function integrate(rate: (y: number) => number, start: number, to: number): number {
  const solver = new Solver(1);
  solver.absoluteTolerance = 1e-13;
  solver.relativeTolerance = 1e-13;
  solver.maxSteps = 100_000;
  const { y } = solver.solve((_t, [value = Number.NaN]) => [rate(value)], 0, [start], to);
  return y[0] ?? Number.NaN;
}

/** Slope of a function by central differences of fourth order. */
export function slopeOf(f: (x: number) => number, x: number, h: number): number {
  return (8 * (f(x + h) - f(x - h)) - (f(x + 2 * h) - f(x - 2 * h))) / (12 * h);
}
