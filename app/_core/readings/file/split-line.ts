import type { Delimiter } from './layout';

/**
 * The cells of one line, for a first look at a file: quotes hold a delimiter together, and a doubled one stands for itself.
 *
 * @param delimiter   what stands between cells; a line of `objects` is not cut
 * @returns           cells without the blanks around them
 */
export function splitLine(line: string, delimiter: Delimiter): string[] {
  if (delimiter === 'objects') return [line];
  if (delimiter === 'blanks') return splitBlanks(line);
  const mark = delimiter === 'tab' ? '\t' : delimiter;
  const cells: string[] = [];
  let cell = '';
  let isQuoted = false;
  for (const letter of line) {
    if (letter === '"') isQuoted = !isQuoted;
    if (letter === mark && !isQuoted) {
      cells.push(unquoted(cell));
      cell = '';
    } else cell += letter;
  }
  cells.push(unquoted(cell));
  return cells;
}

/** Cells of a line whose columns are set apart by blanks, however many. Quotes hold blanks together. */
export function splitBlanks(line: string): string[] {
  return Array.from(line.matchAll(/"((?:[^"]|"")*)"|\S+/g), ([whole, quoted]) =>
    quoted === undefined ? whole : quoted.replaceAll('""', '"').trim(),
  );
}

function unquoted(cell: string): string {
  const bare = cell.trim();
  return bare.length > 1 && bare.startsWith('"') && bare.endsWith('"')
    ? bare.slice(1, -1).replaceAll('""', '"').trim()
    : bare;
}
