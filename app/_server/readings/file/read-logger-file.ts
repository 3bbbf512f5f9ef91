import 'server-only';
import { addRow, type FileFacts, factsFrom } from '#core/readings/file/facts';
import { findStructure, type Structure, structureOf } from '#core/readings/file/find-structure';
import { isHead, isRemark } from '#core/readings/file/head';
import type { Delimiter, Encoding, FileRow } from '#core/readings/file/layout';
import { ok, type Result, refused } from '#core/result';
import { MOST_COLUMNS } from '#shape/readings/file-layout';
import type { Fault, Refusal } from '../../gate/refusal';
import { decode } from './decode';
import { fileRows, firstLines, UnreadableFile } from './file-rows';

/** A file of which everything is known that it says itself. */
export interface LoggerFile {
  text: string;
  encoding: Encoding;
  structure: Structure;
  facts: FileFacts;
  /** First and last rows that hold data. */
  first: FileRow[];
  last: FileRow[];
}

/** Rows of data that a file may have. */
const MOST_ROWS = 500_000;
/** Lines by which delimiter, header and time are found. */
const LOOKED_AT = 400;
/** Rows shown of either end. */
const SHOWN = 5;

/**
 * Reads what a file says itself: letters, delimiter, header, time, and for each column what stands in it.
 *
 * @param asked   what is not to be found out but was said
 */
export async function readLoggerFile(
  bytes: Uint8Array,
  asked: { encoding?: Encoding; delimiter?: Delimiter },
): Promise<Result<LoggerFile, Refusal>> {
  const { text, encoding } = decode(bytes, asked.encoding);
  if (text.includes('\0')) return wrong('it holds bytes that are no letters: save it as text, CSV or JSON');
  try {
    const structure = await structureFound(text, asked.delimiter);
    if (!structure)
      return wrong('no rows with a time and something beside it are found: say how its columns are set apart');
    if (structure.width > MOST_COLUMNS) return wrong(`it has more than ${MOST_COLUMNS} columns`);
    return await withFacts(text, encoding, structure);
  } catch (error) {
    if (error instanceof UnreadableFile) return wrong(error.message);
    throw error;
  }
}

async function structureFound(text: string, asked?: Delimiter): Promise<Structure | null> {
  const isObjects = asked === undefined ? /^\s*[[{]/.test(text) : asked === 'objects';
  if (!isObjects) return findStructure(firstLines(text, LOOKED_AT), asked);
  const rows: FileRow[] = [];
  for await (const row of fileRows(text, 'objects')) if (rows.push(row) >= LOOKED_AT) break;
  return structureOf(rows, 'objects');
}

async function withFacts(text: string, encoding: Encoding, structure: Structure): Promise<Result<LoggerFile, Refusal>> {
  const { time, head, width, delimiter } = structure;
  const facts = factsFrom(width);
  const first: FileRow[] = [];
  const last: FileRow[] = [];
  for await (const row of fileRows(text, delimiter)) {
    const before = facts.rows;
    addRow(facts, row, time, head);
    if (facts.rows === before) continue;
    if (facts.rows > MOST_ROWS) return wrong(`it has more than ${MOST_ROWS} rows: cut it in parts`);
    if (first.length < SHOWN) first.push(row);
    else {
      last.push(row);
      if (last.length > SHOWN) last.shift();
    }
  }
  if (facts.rows === 0) return wrong('no row of it holds a time that can be read');
  return ok({ text, encoding, structure, facts, first, last });
}

/** Rows of a file that are data, or were meant to be: those below its header. */
export async function* rowsBelowHead(text: string, structure: Structure): AsyncGenerator<FileRow> {
  const { head, units, delimiter } = structure;
  // Whatever stands above the header is no data, and no row is missed for it.
  let isBelow = head.length === 0;
  for await (const row of fileRows(text, delimiter)) {
    if (isHead(row.cells, head)) isBelow = true;
    else if (isBelow && !isRemark(row) && !(units.length > 0 && isHead(row.cells, units))) yield row;
  }
}

function wrong(message: string): Result<never, Refusal> {
  const fault: Fault = { path: 'file', message };
  return refused({ why: 'invalid', faults: [fault] });
}
