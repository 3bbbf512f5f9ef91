import { findTime } from './find-time';
import { isRemark, uncommented } from './head';
import { type Delimiter, DELIMITERS, type FileRow, type TimeLayout } from './layout';
import { readNumber } from './read-number';
import { splitLine } from './split-line';
import { isUnit } from './unit-said';

/** What the first rows of a file say of how it is laid out. */
export interface Structure {
  delimiter: Delimiter;
  /** Names of the columns; none when the file has no header. */
  head: string[];
  /** Units in a row of their own; none without one. */
  units: string[];
  /** What stands above the header. */
  preamble: string[];
  /** Cells in a row. */
  width: number;
  time: TimeLayout;
}

/** Delimiters tried, those first that seldom stand in a cell by chance. */
const TRIED = DELIMITERS.filter((delimiter) => delimiter !== 'objects');

/**
 * Finds delimiter, header and time in the first lines of a text.
 *
 * @param lines   of the file, from its first on; some hundred are enough
 * @param asked   the delimiter, when it is known
 * @returns       null when no way of cutting the lines gives rows with a time and something beside it
 */
export function findStructure(lines: readonly string[], asked?: Delimiter): Structure | null {
  let headless: Structure | null = null;
  for (const delimiter of asked ? [asked] : TRIED) {
    const rows = lines.map((line, i) => ({ line: i + 1, cells: splitLine(line, delimiter) }));
    const found = structureOf(rows, delimiter);
    // A way of cutting that cuts the header as it cuts the rows is surer than one that finds none.
    if (found && found.head.length > 0) return found;
    headless ??= found;
  }
  return headless;
}

/**
 * Finds header and time in the first rows of a file.
 *
 * @param rows        from the first on
 * @param delimiter   how they were cut
 * @returns           null when they hold no time, or nothing beside it
 */
export function structureOf(rows: readonly FileRow[], delimiter: Delimiter): Structure | null {
  const filled = rows.filter(({ cells }) => cells.some((cell) => cell !== ''));
  const width = usualWidth(filled);
  if (width < 2) return null;
  // What stands in the second half is data, however long the preamble is.
  const sure = filled
    .slice(Math.floor(filled.length / 2))
    .filter((row) => row.cells.length === width && !isRemark(row));
  const time = findTime(
    sure.map(({ cells }) => cells),
    [],
  );
  if (!time) return null;
  const isData = (row: FileRow) => row.cells.length === width && !isRemark(row) && findTime([row.cells], []) !== null;
  const from = filled.findIndex((row, i) => isData(row) && hasTime(row, time) && i < filled.length);
  const above = filled.slice(0, Math.max(0, from)).map(({ cells }) => uncommented(cells));
  return { delimiter, width, ...headed(above, width), time };
}

function hasTime({ cells }: FileRow, time: TimeLayout): boolean {
  const found = findTime([cells], []);
  if (found?.as !== time.as) return false;
  return found.as !== 'text' || time.as !== 'text' || found.date === time.date;
}

/** The number of cells that most rows of the second half have. */
function usualWidth(rows: readonly FileRow[]): number {
  const later = rows.slice(Math.floor(rows.length / 2));
  const counts = new Map<number, number>();
  for (const { cells } of later) counts.set(cells.length, (counts.get(cells.length) ?? 0) + 1);
  const [width = 0, count = 0] = [...counts].sort((a, b) => b[1] - a[1])[0] ?? [];
  return count >= 0.8 * later.length ? width : 0;
}

function headed(above: readonly string[][], width: number): Pick<Structure, 'head' | 'units' | 'preamble'> {
  const told = (rows: readonly string[][]) => rows.map((cells) => cells.join(' ').trim()).filter((text) => text !== '');
  const last = above.at(-1);
  if (!last || last.length !== width || !areNames(last)) return { head: [], units: [], preamble: told(above) };
  const before = above.at(-2);
  if (before?.length === width && areNames(before) && areUnits(last))
    return { head: before, units: last, preamble: told(above.slice(0, -2)) };
  return { head: last, units: [], preamble: told(above.slice(0, -1)) };
}

function areNames(cells: readonly string[]): boolean {
  const filled = cells.filter((cell) => cell !== '');
  return filled.length >= cells.length / 2 && filled.every((cell) => readNumber(cell, '.') === null);
}

/** Whether a row under the names holds their units: two of them are known as such. */
function areUnits(cells: readonly string[]): boolean {
  return cells.filter((cell) => isUnit(cell)).length >= 2;
}
