/**
 * Covariance of fitted parameters: s²·(JᵀJ)⁻¹, s² the sum of squared residuals over what freedom is left.
 *
 * @param slopes      for each reading the slope of the curve by each parameter
 * @param residuals   reading less curve, one each
 * @param leastSd     what s is at least: readings in whole steps may all lie on the curve by chance
 * @returns           null where the readings do not tell the parameters apart
 */
export function covariance(
  slopes: readonly (readonly number[])[],
  residuals: readonly number[],
  leastSd: number,
): number[][] | null {
  const many = slopes[0]?.length ?? 0;
  const freedom = residuals.length - many;
  if (freedom < 1) return null;
  const squares = residuals.reduce((sum, r) => sum + r * r, 0) / freedom;
  const variance = Math.max(squares, leastSd * leastSd) * spreadByMemory(residuals) ** 2;
  const information = Array.from({ length: many }, (_, i) =>
    Array.from({ length: many }, (_, j) => slopes.reduce((sum, row) => sum + (row[i] ?? 0) * (row[j] ?? 0), 0)),
  );
  const inverse = inverted(information);
  return inverse?.map((row) => row.map((value) => value * variance)) ?? null;
}

/** Neighbouring residuals that are alike tell less than independent ones: never more than this part of the one before. */
const MOST_MEMORY = 0.9;

/**
 * By how much standard errors grow because neighbouring residuals are alike: √((1 + ρ)/(1 − ρ)), ρ the correlation of each
 * with the next; 1 where they alternate. First-order autoregression, any textbook of time series (from memory).
 */
export function spreadByMemory(residuals: readonly number[]): number {
  let own = 0;
  let next = 0;
  for (const [i, r] of residuals.entries()) {
    own += r * r;
    next += r * (residuals[i + 1] ?? 0);
  }
  if (own === 0) return 1;
  const memory = Math.min(MOST_MEMORY, Math.max(0, next / own));
  return Math.sqrt((1 + memory) / (1 - memory));
}

/** Correlation below which a matrix of information is taken as one that tells its parameters apart: 1 − ρ² at least this. */
const APART = 1e-10;

/** Inverse of a small symmetric matrix by elimination, scaled so that units do not matter; null when it has none. */
export function inverted(matrix: readonly (readonly number[])[]): number[][] | null {
  const scale = matrix.map((row, i) => Math.sqrt(row[i] ?? 0));
  if (scale.some((one) => !(one > 0))) return null;
  const rows = matrix.map((row, i) => [
    ...row.map((value, j) => value / ((scale[i] as number) * (scale[j] as number))),
    ...matrix.map((_, j) => (i === j ? 1 : 0)),
  ]);
  for (let i = 0; i < rows.length; i++) {
    const pivot = rows[i] as number[];
    const lead = pivot[i] as number;
    if (!(lead > APART)) return null;
    for (let j = 0; j < pivot.length; j++) pivot[j] = (pivot[j] as number) / lead;
    for (const [k, row] of rows.entries()) {
      const by = row[i] as number;
      if (k !== i) for (let j = 0; j < row.length; j++) row[j] = (row[j] as number) - by * (pivot[j] as number);
    }
  }
  const many = matrix.length;
  return rows.map((row, i) => row.slice(many).map((value, j) => value / ((scale[i] as number) * (scale[j] as number))));
}
