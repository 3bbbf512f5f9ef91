import { studentT } from './student';

/** What one stretch says of a figure. */
export interface Said {
  value: number;
  /** Standard error. */
  error: number;
  /** Degrees of freedom of that error. */
  freedom: number;
}

/** What all of them say together. */
export interface Together {
  value: number;
  /** Half the width of the interval of 95 %, from the scatter of the readings and of the stretches. */
  half: number;
  /** Standard deviation from one stretch to another beyond what the readings explain. */
  between: number;
}

/** Stretches from which on their own scatter decides how wide the interval is. */
const ENOUGH = 3;

/**
 * The figure that several stretches say, and how well it is known. Nights differ by more than the noise of a probe: a door
 * stood open, a lid was off. What they differ by is estimated (DerSimonian and Laird 1986, Controlled Clinical Trials 7, 177)
 * and, from three stretches on, the interval is widened by their own scatter and Student's t of one less than their number
 * (Hartung and Knapp 2001, Statistics in Medicine 20, 3875; both from memory), never narrowed by it.
 *
 * @param said   at least one
 */
export function together(said: readonly Said[]): Together {
  const least = Math.max(...said.map(({ value }) => Math.abs(value)), 1e-12) * 1e-6;
  const variances = said.map(({ error }) => Math.max(error, least) ** 2);
  const between2 = betweenOf(said, variances);
  const weights = variances.map((variance) => 1 / (variance + between2));
  const sum = weights.reduce((total, w) => total + w, 0);
  const value = mean(said, weights);
  const plain = 1 / sum;
  const scatter =
    said.reduce((total, one, i) => total + (weights[i] ?? 0) * (one.value - value) ** 2, 0) /
    (Math.max(1, said.length - 1) * sum);
  const isMany = said.length >= ENOUGH;
  const freedom = isMany ? said.length - 1 : said.reduce((total, one) => total + one.freedom, 0);
  const error = Math.sqrt(isMany ? Math.max(plain, scatter) : plain);
  return { value, half: studentT(freedom) * error, between: Math.sqrt(between2) };
}

function mean(said: readonly Said[], weights: readonly number[]): number {
  const sum = weights.reduce((total, w) => total + w, 0);
  return said.reduce((total, { value }, i) => total + (weights[i] ?? 0) * value, 0) / sum;
}

function betweenOf(said: readonly Said[], variances: readonly number[]): number {
  const weights = variances.map((variance) => 1 / variance);
  const sum = weights.reduce((total, w) => total + w, 0);
  const value = mean(said, weights);
  const q = said.reduce((total, one, i) => total + (weights[i] ?? 0) * (one.value - value) ** 2, 0);
  const squares = weights.reduce((total, w) => total + w * w, 0);
  const c = sum - squares / sum;
  return c > 0 ? Math.max(0, (q - (said.length - 1)) / c) : 0;
}
