import { isHead, isRemark } from './head';
import { DATE_ORDERS, type DateOrder, type FileRow, type TimeLayout } from './layout';
import { readNumber } from './read-number';
import { dayOf, readClock, readTime, takeApart } from './read-time';

/** What a whole file says of one of its columns. */
export interface ColumnFacts {
  /** Cells that hold something, a number, and exactly 0. */
  filled: number;
  numbers: number;
  zeros: number;
  /** Distinct words with how often each stands there, at most forty; of numbers too. */
  words: Map<string, number>;
  /** Whether there are more of them. */
  isCut: boolean;
}

/** What a whole file says. */
export interface FileFacts {
  /** Rows that hold data. */
  rows: number;
  columns: ColumnFacts[];
  /** Orders in which every date can be meant. */
  orders: DateOrder[];
  /** Rows by their time of day, min since 00:00. */
  clocks: Map<number, number>;
  /** Rows with no time of day at all. */
  clockless: number;
  /** Rows whose time says its difference from UTC. */
  zoned: number;
  /** Numbers with a comma, and with a point. */
  commas: number;
  points: number;
}

/** Distinct words kept of a column. */
const WORDS = 40;

/**
 * Begins to gather what a whole file says, row by row: a first look at some rows cannot tell the order of a date.
 *
 * @param width   cells of a row
 */
export function factsFrom(width: number): FileFacts {
  const column = (): ColumnFacts => ({ filled: 0, numbers: 0, zeros: 0, words: new Map(), isCut: false });
  return {
    rows: 0,
    columns: Array.from({ length: width }, column),
    orders: [...DATE_ORDERS],
    clocks: new Map(),
    clockless: 0,
    zoned: 0,
    commas: 0,
    points: 0,
  };
}

/** Adds a row to what is known; one that is no data, such as what stands above the header, adds nothing. */
export function addRow(facts: FileFacts, row: FileRow, time: TimeLayout, head: readonly string[]): void {
  if (isRemark(row) || isHead(row.cells, head) || !addTime(facts, row.cells, time)) return;
  facts.rows += 1;
  for (const [place, column] of facts.columns.entries()) addCell(facts, column, row.cells[place] ?? '');
}

function addTime(facts: FileFacts, cells: readonly string[], time: TimeLayout): boolean {
  if (time.as !== 'text') {
    const found = readTime(cells, time);
    if (found && !('atMs' in found)) addClock(facts, found.dayMs, found.hasClock);
    return found !== null;
  }
  const apart = takeApart(cells[time.date] ?? '');
  if (!apart) return false;
  const fitting = apart.orders.filter((order) => dayOf(apart.parts, order) !== null);
  if (fitting.length === 0) return false;
  facts.orders = facts.orders.filter((order) => fitting.includes(order));
  if (apart.offsetMin !== undefined) facts.zoned += 1;
  const clock = time.clock === undefined ? '' : (cells[time.clock] ?? '');
  addClock(facts, readClock(clock) ?? apart.dayMs, apart.hasClock || clock !== '');
  return true;
}

function addClock(facts: FileFacts, dayMs: number, hasClock: boolean): void {
  const minute = Math.ceil(dayMs / 60_000);
  if (hasClock) facts.clocks.set(minute, (facts.clocks.get(minute) ?? 0) + 1);
  else facts.clockless += 1;
}

function addCell(facts: FileFacts, column: ColumnFacts, cell: string): void {
  if (cell === '') return;
  column.filled += 1;
  if (/^[+-]?\d+,\d+$/.test(cell)) facts.commas += 1;
  if (/^[+-]?\d*\.\d+$/.test(cell)) facts.points += 1;
  const found = readNumber(cell, '.') ?? readNumber(cell, ',');
  if (found) column.numbers += 1;
  if (found?.value === 0 && !found.isBelow) column.zeros += 1;
  const count = column.words.get(cell);
  if (count === undefined && column.words.size >= WORDS) column.isCut = true;
  else column.words.set(cell, (count ?? 0) + 1);
}
