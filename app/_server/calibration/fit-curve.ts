import 'server-only';
import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import { covariance } from '#core/calibration/covariance';

/** A curve that is to be laid through readings. */
export interface Curve {
  /** The readings. */
  values: readonly number[];
  /** The curve at each of them for some parameters. */
  at: (parameters: readonly number[]) => readonly number[];
  /** Where the search begins; the size of each tells the search what a small step is, so none may be 0. */
  starts: readonly number[];
  /** Ends between which each is looked for. */
  least: readonly number[];
  most: readonly number[];
  /** Standard deviation that a reading has at least: a step of the display over √12. */
  leastSd: number;
  /** Steps of the search; left out: enough from anywhere. */
  steps?: number;
}

/** What was found. */
export interface Fitted {
  parameters: number[];
  /** Standard errors, one each. */
  errors: number[];
  fitted: number[];
  /** Standard deviation of the readings about the curve. */
  sd: number;
  freedom: number;
}

/** Steps of the search; what is nearly a straight line is on the spot after five. */
const STEPS = 10;
/** Part of a parameter by which it is moved to see what the curve does. */
const SMALL = 1e-4;

/**
 * The parameters with the least sum of squares (Levenberg and Marquardt), and how well they are known: the package gives no
 * covariance, so it is worked out from the slopes of the curve at what was found.
 *
 * @returns   null where the readings do not tell the parameters apart, or the search ran into an end of what is possible
 */
export function fitCurve({ values, at, starts, least, most, leastSd, steps = STEPS }: Curve): Fitted | null {
  const many = starts.length;
  if (values.length <= many) return null;
  // Parameters are looked for as multiples of where the search begins: the package damps all of them alike.
  const real = (multiples: readonly number[]) => multiples.map((multiple, k) => multiple * (starts[k] as number));
  const ends = (list: readonly number[]) => list.map((end, k) => end / (starts[k] as number));
  const [low, high] = [ends(least), ends(most)];
  const x = values.map((_, i) => i);
  const lined = (multiples: readonly number[]) => at(real(multiples));
  const slopes = (multiples: readonly number[]) => slopesOf(lined, multiples);
  const { parameterValues } = levenbergMarquardt(
    { x, y: [...values] },
    (multiples) => {
      const line = lined(multiples);
      return (i) => line[i] as number;
    },
    {
      initialValues: starts.map(() => 1),
      minValues: low.map((end, k) => Math.min(end, high[k] as number)),
      maxValues: low.map((end, k) => Math.max(end, high[k] as number)),
      maxIterations: steps,
      errorTolerance: 0,
      jacobianFunction: (multiples) => {
        const rows = slopes(multiples);
        return (i) => rows[i] as number[];
      },
    },
  );
  const fitted = lined(parameterValues);
  const residuals = values.map((value, i) => value - (fitted[i] as number));
  const spread = covariance(slopes(parameterValues), residuals, leastSd);
  const parameters = real(parameterValues);
  const isAtEnd = parameters.some(
    (value, k) => k === 0 && (value <= (least[k] as number) || value >= (most[k] as number)),
  );
  if (!spread || isAtEnd || !parameters.every(Number.isFinite)) return null;
  const squares = residuals.reduce((sum, r) => sum + r * r, 0);
  return {
    parameters,
    errors: spread.map((row, k) => Math.sqrt(row[k] as number) * Math.abs(starts[k] as number)),
    fitted: [...fitted],
    sd: Math.sqrt(squares / (values.length - many)),
    freedom: values.length - many,
  };
}

function slopesOf(line: (multiples: readonly number[]) => readonly number[], multiples: readonly number[]): number[][] {
  const columns = multiples.map((multiple, k) => {
    const step = SMALL * Math.max(1, Math.abs(multiple));
    const moved = (by: number) => line(multiples.map((one, j) => (j === k ? one + by : one)));
    const [up, down] = [moved(step), moved(-step)];
    return up.map((value, i) => (value - (down[i] as number)) / (2 * step));
  });
  return (columns[0] ?? []).map((_, i) => columns.map((column) => column[i] as number));
}
