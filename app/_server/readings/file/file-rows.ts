import 'server-only';
import { Readable } from 'node:stream';
import { setImmediate as letOthers } from 'node:timers/promises';
import { type CsvError, parse } from 'csv-parse';
import type { Delimiter, FileRow } from '#core/readings/file/layout';
import { splitBlanks } from '#core/readings/file/split-line';
import { objectRows } from './object-rows';

/** Something about a file that keeps it from being read on. */
export class UnreadableFile extends Error {}

/** Characters of one row. */
const LONGEST_ROW = 100_000;
/** Characters of the first lines that are looked at. */
const FIRST_LETTERS = 500_000;
const TOO_LONG = `a row is longer than ${LONGEST_ROW} characters; is a quote left open?`;
/** Characters handed on at a time. */
const PIECE = 1 << 16;

/** Rows after which whoever else waits for this process has its turn. */
const AT_A_TIME = 500;

/**
 * The rows of a file one after the other, so that a long one is never held whole as cells, and with others served in between.
 *
 * @param text        without its byte order mark
 * @param delimiter   what stands between its cells
 * @throws            UnreadableFile when it cannot be read on
 */
export async function* fileRows(text: string, delimiter: Delimiter): AsyncGenerator<FileRow> {
  let count = 0;
  for await (const row of rowsOf(text, delimiter)) {
    yield row;
    count += 1;
    if (count % AT_A_TIME === 0) await letOthers();
  }
}

async function* rowsOf(text: string, delimiter: Delimiter): AsyncGenerator<FileRow> {
  if (delimiter === 'objects') {
    const rows = objectRows(text);
    if (!rows.ok) throw new UnreadableFile(rows.reason);
    yield* rows.value;
  } else if (delimiter === 'blanks') {
    let number = 0;
    for (const line of linesOf(text)) {
      number += 1;
      const cells = splitBlanks(line);
      if (cells.length > 0) yield { line: number, cells };
    }
  } else yield* tableRows(text, delimiter === 'tab' ? '\t' : delimiter);
}

/**
 * The first lines of a text, and no more letters of them than are cut into cells in a moment.
 *
 * @throws   UnreadableFile when one is longer than any row may be
 */
export function firstLines(text: string, count: number): string[] {
  const lines: string[] = [];
  let letters = 0;
  for (const line of linesOf(text)) {
    letters += line.length;
    if (lines.push(line) >= count || letters >= FIRST_LETTERS) break;
  }
  return lines;
}

async function* tableRows(text: string, delimiter: string): AsyncGenerator<FileRow> {
  const parser = Readable.from(pieces(text)).pipe(
    parse({
      delimiter,
      info: true,
      relax_quotes: true,
      relax_column_count: true,
      skip_empty_lines: true,
      max_record_size: LONGEST_ROW,
      record_delimiter: ['\r\n', '\n', '\r'],
    }),
  );
  try {
    for await (const { record, info } of parser as AsyncIterable<{ record: string[]; info: { lines: number } }>) {
      const cells = record.map((cell) => cell.trim());
      if (cells.some((cell) => cell !== '')) yield { line: info.lines - breaksIn(record), cells };
    }
  } catch (error) {
    throw new UnreadableFile(wordsOf(error as CsvError));
  }
}

/** Line breaks within quotes: a row is told by the line it began on. */
function breaksIn(record: readonly string[]): number {
  return record.reduce((sum, cell) => sum + (cell.includes('\n') ? cell.split('\n').length - 1 : 0), 0);
}

function wordsOf({ code, lines }: CsvError & { lines?: number }): string {
  const place = lines === undefined ? '' : `Line ${lines}: `;
  if (code === 'CSV_QUOTE_NOT_CLOSED') return `${place}a quote is opened and never closed.`;
  if (code === 'CSV_MAX_RECORD_SIZE') return `${place}${TOO_LONG}`;
  return `${place}it cannot be read as a table.`;
}

function* pieces(text: string): Generator<string> {
  for (let from = 0; from < text.length; from += PIECE) yield text.slice(from, from + PIECE);
}

function* linesOf(text: string): Generator<string> {
  let from = 0;
  let number = 1;
  const breaks = /\r\n|\n|\r/g;
  for (let found = breaks.exec(text); found; found = breaks.exec(text)) {
    yield lineOf(text, from, found.index, number);
    from = breaks.lastIndex;
    number += 1;
  }
  if (from < text.length) yield lineOf(text, from, text.length, number);
}

function lineOf(text: string, from: number, to: number, number: number): string {
  if (to - from > LONGEST_ROW) throw new UnreadableFile(`Line ${number}: ${TOO_LONG}`);
  return text.slice(from, to);
}
