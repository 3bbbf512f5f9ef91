import { readFileSync } from 'node:fs';

/** One published value. `at` holds the arguments in the order the file names them. */
export interface Row {
  at: number[];
  value: number;
  /** Greatest difference allowed: the last printed digit, unless the file's note says otherwise. */
  tolerance?: number;
  /** Instead of a tolerance: greatest factor, either way. */
  within?: number;
  /** Read in the source, returned by the published program, or recalled. */
  mark: 'SEEN' | 'RUN' | 'MEMORY';
  source: string;
  note?: string;
}

/** A file of `tests/reference`. */
export interface Reference {
  law: string;
  unit: string;
  arguments: string[];
  note?: string;
  sources: Record<string, { title: string; address: string }>;
  rows: Row[];
}

export const REFERENCES = new URL('../../reference/', import.meta.url);

/** The published values of a law. */
export function reference(name: string): Reference {
  return JSON.parse(readFileSync(new URL(`${name}.json`, REFERENCES), 'utf8')) as Reference;
}

/** Rows as cases of `test.each`, each with its name first. */
export function cases(name: string): [string, Row][] {
  const file = reference(name);
  return file.rows.map((row) => {
    const at = row.at.map((value, i) => `${file.arguments[i]} ${value}`).join(', ');
    return [`${at} is ${`${row.value} ${file.unit}`.trimEnd()} (${row.mark} ${row.source})`, row];
  });
}

/** How far a value lies from a row, in tolerances: at most 1 passes. */
export function miss(row: Row, value: number): number {
  // A hair for the rounding of the subtraction itself, where the tolerance is the last digit printed.
  const hair = 1e-12 * Math.abs(row.value);
  return Math.abs(value - row.value) / ((row.tolerance ?? 0) + hair);
}

/** An argument of a row that must be there. */
export function argument(row: Row, i: number): number {
  const value = row.at[i];
  if (value === undefined) throw new Error(`row without argument ${i}`);
  return value;
}
