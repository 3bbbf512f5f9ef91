/**
 * What this room knows: the almanac, tables that are made from the laws of `water/` to be read and printed.
 * What it leaves out: looks, and any figure of a site: a table is the same for everybody but for the custom of units.
 * Where the numbers come from: the laws a table names, each with its source in `water/sources.json`.
 */
import type { Custom } from '../units/shown';
import { toCelsius } from '../units/temperature';
import type { Law } from '../water/law';

/** One ruled table. Every figure is written already; the unit stands in the caption or at the head of its column. */
export interface Sheet {
  /** Unique on its page. */
  id: string;
  caption: string;
  /** Head of the first column, which heads the rows. */
  corner: string;
  columns: readonly string[];
  rows: readonly { head: string; cells: readonly string[] }[];
  /** Cells are words, not figures. */
  words?: true;
}

/** A page of the almanac. */
export interface AlmanacTable {
  /** Its address. */
  id: string;
  title: string;
  /** What it is for, in a line. */
  use: string;
  leavesOut: string;
  /** What can hurt somebody where this is used. */
  caution?: string;
  /** Laws it is made of or explains, by their names in `water/sources.json`. */
  laws: readonly string[];
  sheets: (custom: Custom) => Sheet[];
}

/** A value of an axis: as it is written, and in the core's unit. */
export interface Step {
  said: string;
  value: number;
}

/** Values of an axis that are written as they are, or as `say` has it. */
export function steps(values: readonly number[], say: (value: number) => string = String): Step[] {
  return values.map((value) => ({ said: say(value), value }));
}

/** Values of an axis that people read in one of two units: each custom has its own round ones. */
export function stepsIn(
  custom: Custom,
  metric: readonly number[],
  us: readonly number[],
  toMetric: (us: number) => number,
): Step[] {
  if (custom === 'metric') return steps(metric);
  return us.map((value) => ({ said: String(value), value: toMetric(value) }));
}

/** Temperatures from `low` to `high` °C by two degrees, or by five of Fahrenheit. */
export function temperatures(custom: Custom, low: number, high: number): Step[] {
  const us = custom === 'us';
  const by = us ? 5 : 2;
  const [first, last] = us ? [Math.ceil((low * 1.8 + 32) / by) * by, high * 1.8 + 32] : [low, high];
  const values: number[] = [];
  for (let value = first; value <= last; value += by) values.push(value);
  return values.map((value) => ({ said: String(value), value: toCelsius(value, us ? 'F' : 'C') }));
}

/** Symbol of the person's degrees. */
export function degrees(custom: Custom): string {
  return custom === 'us' ? '°F' : '°C';
}

/** A temperature named in a caption: `atDegrees('us', 25)` reads "77 °F". */
export function atDegrees(custom: Custom, celsius: number): string {
  return custom === 'us' ? `${Math.round(celsius * 1.8 + 32)} °F` : `${celsius} °C`;
}

/** A table of one law over two arguments. */
export function grid(
  frame: Pick<Sheet, 'id' | 'caption' | 'corner'>,
  down: readonly Step[],
  across: readonly Step[],
  cell: (down: number, across: number) => string,
): Sheet {
  return {
    ...frame,
    columns: across.map(({ said }) => said),
    rows: down.map(({ said, value }) => ({ head: said, cells: across.map((one) => cell(value, one.value)) })),
  };
}

/** A table of several things of one argument. */
export function listed(
  frame: Pick<Sheet, 'id' | 'caption' | 'corner' | 'columns'>,
  down: readonly Step[],
  cells: (value: number) => string[],
): Sheet {
  return { ...frame, rows: down.map(({ said, value }) => ({ head: said, cells: cells(value) })) };
}

/** Stands where the law was not published for what the cell would be of. */
export const BEYOND = '–';

/**
 * A figure of a law as a cell shows it.
 * @param decimals after the point
 * @param factor from the law's unit to the table's
 * @returns `BEYOND` outside the law's range, "never" where it is Infinity
 */
export function figure<A extends number[]>(law: Law<A>, decimals: number, factor: number, ...values: A): string {
  return law.inRange(...values) ? written(factor * law.compute(...values), decimals) : BEYOND;
}

/** A number as a cell shows it. */
export function written(value: number, decimals: number): string {
  if (value === Number.POSITIVE_INFINITY) return 'never';
  const said = value.toFixed(decimals);
  const plain = Number(said) === 0 ? said.replace('-', '') : said;
  return plain.replace('-', '−');
}
