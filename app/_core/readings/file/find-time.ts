import type { TimeLayout } from './layout';
import { readClock, takeApart } from './read-time';

/** Part of the rows that must agree before something is believed of a column; the rest may be remarks and refuse. */
const MOST = 0.9;
/** Seconds since 1970 of a logger: 1990 to 2100. */
const EPOCH = [631_152_000, 4_102_444_800] as const;

/**
 * Where rows keep their time, by what stands in them.
 *
 * @param rows   cells of rows of one width
 * @param head   names of the columns; may be none
 * @returns      null when no column holds times. The order of a date is left open
 */
export function findTime(rows: readonly string[][], head: readonly string[]): TimeLayout | null {
  const width = rows[0]?.length ?? 0;
  const columns = Array.from({ length: width }, (_, place) => rows.map((cells) => cells[place] ?? ''));
  const date = columns.findIndex((cells) => mostly(cells, (cell) => takeApart(cell) !== null && !isEpoch(cell)));
  if (date >= 0) return datedBy(columns, date);
  return partsOf(columns) ?? epochOf(columns, head);
}

function datedBy(columns: readonly string[][], date: number): TimeLayout {
  const isDated = mostly(columns[date] ?? [], (cell) => takeApart(cell)?.hasClock === true);
  const clock = isDated ? -1 : columns.findIndex((cells) => mostly(cells, (cell) => readClock(cell) !== null));
  return { as: 'text', date, ...(clock < 0 ? {} : { clock }), order: null };
}

const RANGES = [
  [1970, 2200],
  [1, 12],
  [1, 31],
  [0, 24],
  [0, 59],
  [0, 60],
] as const;

/** Year, month, day, and the hour, minute and second that may follow, each in a column of its own. */
function partsOf(columns: readonly string[][]): TimeLayout | null {
  const isPart = (place: number, part: number) => {
    const [low, high] = RANGES[part] ?? [1, 0];
    return mostly(
      columns[place] ?? [],
      (cell) => /^(\d{1,2}|\d{4})$/.test(cell) && Number(cell) >= low && Number(cell) <= high,
    );
  };
  const from = columns.findIndex((_, place) => [0, 1, 2].every((part) => isPart(place + part, part)));
  if (from < 0) return null;
  const more = [3, 4, 5].findIndex((part) => !isPart(from + part, part));
  const count = more < 0 ? 6 : 3 + more;
  return { as: 'parts', columns: Array.from({ length: count }, (_, part) => from + part) };
}

function epochOf(columns: readonly string[][], head: readonly string[]): TimeLayout | null {
  const found = columns
    .map((cells, place) => ({ place, isTime: mostly(cells, isEpoch) }))
    .filter(({ isTime }) => isTime);
  const named = found.find(({ place }) => /time|date|epoch|unix|sec/i.test(head[place] ?? ''));
  const place = (named ?? found[0])?.place;
  if (place === undefined) return null;
  const first = columns[place]?.find(isEpoch) ?? '';
  return { as: 'epoch', column: place, unit: Number(first) > EPOCH[1] ? 'ms' : 's' };
}

function isEpoch(cell: string): boolean {
  if (!/^\d{9,13}(\.\d+)?$/.test(cell)) return false;
  const count = Number(cell);
  return [1, 1000].some((unit) => count >= EPOCH[0] * unit && count <= EPOCH[1] * unit);
}

function mostly(cells: readonly string[], holds: (cell: string) => boolean): boolean {
  return cells.length > 0 && cells.filter(holds).length >= MOST * cells.length;
}
