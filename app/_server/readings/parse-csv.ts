import 'server-only';
import { CsvError, parse } from 'csv-parse/sync';
import { type BodyFault, MOST_RECORDS, type ReadRecord } from '#core/readings/arrived';
import { ok, type Result, refused } from '#core/result';
import { type CsvCells, readCsvRecord } from '#shape/readings/csv-record';

const NEEDED = ['name', 'time', 'value'] as const;
/** Characters of one line. */
const LONGEST_LINE = 2000;

/**
 * Reads a table of readings: a line that names its columns (`name`, `time`, `value`, and `unit` or not), then one a reading.
 *
 * @param body   its text, bounded by whoever took it in
 * @returns      what each line says or what is wrong with it, in order; or why nothing of it can be understood
 */
export function parseCsv(body: string): Result<ReadRecord[], BodyFault> {
  let lines: string[][];
  try {
    lines = parse(body, {
      bom: true,
      trim: true,
      skip_empty_lines: true,
      relax_column_count: true,
      max_record_size: LONGEST_LINE,
      to: MOST_RECORDS + 2,
    });
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    return malformed('', `is no CSV: ${error.code.toLowerCase().replaceAll('_', ' ')}`);
  }
  const [head = [], ...rows] = lines;
  const columns = head.map((column) => column.toLowerCase());
  const missing = NEEDED.find((column) => !columns.includes(column));
  if (missing)
    return malformed(missing, 'is no column of the first line, which must name name, time, value and may name unit');
  if (new Set(columns).size < columns.length) return malformed('', 'names a column twice');
  if (rows.length === 0) return malformed('', 'must hold a record');
  if (rows.length > MOST_RECORDS)
    return refused({ kind: 'too-large', field: '', why: `holds more than ${MOST_RECORDS} records` });
  return ok(rows.map((row) => recordOf(columns, row)));
}

function recordOf(columns: readonly string[], row: readonly string[]): ReadRecord {
  if (row.length !== columns.length)
    return refused({ field: '', why: `has ${row.length} cells where the first line names ${columns.length}` });
  const cell = (column: keyof CsvCells): string => row[columns.indexOf(column)] ?? '';
  return readCsvRecord({ name: cell('name'), time: cell('time'), value: cell('value'), unit: cell('unit') });
}

function malformed(field: string, why: string): Result<never, BodyFault> {
  return refused({ kind: 'malformed', field, why });
}
