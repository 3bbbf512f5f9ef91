/** What a cell of a table may hold. Texts are whatever people typed; figures and instants are ours. */
export type Cell = string | number | Date | null;

/** First letters by which a spreadsheet takes a text for a formula, or looks past to what follows. */
const FORMULA = /^[=+\-@\t\r\0]/;
const NEEDS_QUOTES = /[",\r\n]/;

/**
 * A table as CSV (RFC 4180: CRLF, quotes doubled) that a spreadsheet opens without running anything in it. A text that
 * looks like a formula gets a single quote before it; a figure stays a figure, whatever its sign.
 *
 * @param head   names of the columns
 * @param rows   as many cells in each as there are columns
 */
export function writeCsv(head: readonly string[], rows: readonly (readonly Cell[])[]): string {
  return [head, ...rows].map((row) => `${row.map(written).join(',')}\r\n`).join('');
}

function written(cell: Cell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return String(cell);
  if (cell instanceof Date) return cell.toISOString();
  const text = FORMULA.test(cell) ? `'${cell}` : cell;
  return NEEDS_QUOTES.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
