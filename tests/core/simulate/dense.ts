/** A full matrix, row by row. */
export type Matrix = number[][];

/** Jacobian of a vector function by central differences of fourth order. */
export function jacobian(f: (x: Float64Array) => Float64Array, x: Float64Array): Matrix {
  const rows = Array.from({ length: x.length }, () => new Array<number>(x.length).fill(0));
  for (const [j, value] of x.entries()) {
    const h = 8e-5 * Math.max(Math.abs(value), 1e-3);
    const at = (step: number) => f(x.with(j, value + step * h));
    const [a, b, c, d] = [at(-2), at(-1), at(1), at(2)];
    for (const [i, row] of rows.entries())
      row[j] = ((a[i] ?? 0) - 8 * (b[i] ?? 0) + 8 * (c[i] ?? 0) - (d[i] ?? 0)) / (12 * h);
  }
  return rows;
}

/** Solve m·u = r by Gaussian elimination with row pivots. */
export function gauss(m: Matrix, r: Float64Array): Float64Array {
  const n = r.length;
  const rows = m.map((row, i) => [...row, r[i] ?? Number.NaN]);
  for (let j = 0; j < n; j++) {
    const best = rows.slice(j).reduce((top, row, i) => (size(row, j) > size(rows[top], j) ? i + j : top), j);
    const pivot = rows[best] as number[];
    rows[best] = rows[j] as number[];
    rows[j] = pivot;
    for (const row of rows.slice(j + 1)) {
      const factor = (row[j] as number) / (pivot[j] as number);
      for (let c = j; c <= n; c++) row[c] = (row[c] as number) - factor * (pivot[c] as number);
    }
  }
  const u = new Float64Array(n);
  for (let i = n - 1; i >= 0; i--) {
    const row = rows[i] as number[];
    const rest = row.slice(i + 1, n).reduce((sum, value, c) => sum + value * (u[i + 1 + c] as number), 0);
    u[i] = ((row[n] as number) - rest) / (row[i] as number);
  }
  return u;
}

function size(row: number[] | undefined, j: number): number {
  return Math.abs(row?.[j] ?? 0);
}
