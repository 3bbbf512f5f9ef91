import fc from 'fast-check';
import type { Delimiter } from '#core/readings/file/layout';

/** How a made-up logger writes its tables. */
export interface Dialect {
  delimiter: Exclude<Delimiter, 'objects'>;
  decimal: '.' | ',';
  order: 'ymd' | 'dmy' | 'mdy';
  /** What stands between the parts of a date. */
  between: string;
  eol: string;
  encoding: 'utf-8' | 'utf-8-mark' | 'utf-16le' | 'windows-1252';
  preamble: string[];
  hasUnits: boolean;
  isQuoted: boolean;
  hasPlus: boolean;
  isNewestFirst: boolean;
  hasNameless: boolean;
}

/** One row: minutes since 2020-01-01 00:00 on the wall, and two readings; null where there is none. */
export interface MadeRow {
  minute: number;
  values: [number | null, number | null];
}

export const anyDialect: fc.Arbitrary<Dialect> = fc
  .record({
    delimiter: fc.constantFrom('tab' as const, ';' as const, ',' as const, '|' as const, 'blanks' as const),
    decimal: fc.constantFrom('.' as const, ',' as const),
    order: fc.constantFrom('ymd' as const, 'dmy' as const, 'mdy' as const),
    between: fc.constantFrom('-', '/', '.'),
    eol: fc.constantFrom('\n', '\r\n', '\r'),
    encoding: fc.constantFrom('utf-8' as const, 'utf-8-mark' as const, 'utf-16le' as const, 'windows-1252' as const),
    preamble: fc.array(fc.constantFrom('Serial 7392', 'Gerät: Süd', 'a remark', 'Firmware 1.11'), { maxLength: 4 }),
    hasUnits: fc.boolean(),
    isQuoted: fc.boolean(),
    hasPlus: fc.boolean(),
    isNewestFirst: fc.boolean(),
    hasNameless: fc.boolean(),
  })
  .map((one) => ({
    ...one,
    // A comma cannot part both cells and decimals unless cells are quoted; blanks can hold no empty cell at the end.
    isQuoted: one.isQuoted || (one.delimiter === ',' && one.decimal === ','),
    hasNameless: one.hasNameless && one.delimiter !== 'blanks',
  }));

export const anyRows: fc.Arbitrary<MadeRow[]> = fc
  .uniqueArray(
    fc.record({
      minute: fc.integer({ min: 0, max: 500_000 }),
      values: fc.tuple(anyValue(0, 4000), anyValue(600, 900)),
    }),
    { selector: ({ minute }) => minute, minLength: 12, maxLength: 60 },
  )
  .map((rows) => rows.sort((a, b) => a.minute - b.minute));

/** A reading of so many hundredths, or none. */
function anyValue(min: number, max: number): fc.Arbitrary<number | null> {
  const hundredths = fc.integer({ min, max }).map((n) => n / 100);
  return fc.option(hundredths, { freq: 8, nil: null });
}

const TWO = (count: number) => String(count).padStart(2, '0');

/** The file that a logger of this dialect would have written. */
export function written(dialect: Dialect, rows: readonly MadeRow[]): Uint8Array<ArrayBuffer> {
  const { delimiter, preamble, hasUnits, isNewestFirst, hasNameless, eol } = dialect;
  const ordered = isNewestFirst ? [...rows].reverse() : rows;
  const more = hasNameless ? [''] : [];
  const table = [
    ['Date', 'Clock', 'Temp', 'pH', ...more],
    ...(hasUnits ? [['date', 'hh:mm', 'degC', 'pH', ...more]] : []),
    ...ordered.map(({ minute, values }) => [
      ...timeOf(dialect, minute),
      ...values.map((value) => numberOf(dialect, value)),
      ...more,
    ]),
  ];
  const mark = delimiter === 'tab' ? '\t' : delimiter === 'blanks' ? '   ' : delimiter;
  const lines = [...preamble, ...table.map((cells) => cells.map((cell) => cellOf(dialect, cell)).join(mark))];
  return encoded(dialect.encoding, lines.join(eol) + eol);
}

function timeOf({ order, between }: Dialect, minute: number): [string, string] {
  const at = new Date(Date.UTC(2020, 0, 1) + minute * 60_000);
  const [y, m, d] = [String(at.getUTCFullYear()), TWO(at.getUTCMonth() + 1), TWO(at.getUTCDate())];
  const parts = order === 'ymd' ? [y, m, d] : order === 'dmy' ? [d, m, y] : [m, d, y];
  return [parts.join(between), `${TWO(at.getUTCHours())}:${TWO(at.getUTCMinutes())}`];
}

function numberOf({ decimal, hasPlus }: Dialect, value: number | null): string {
  if (value === null) return 'NA';
  return `${hasPlus ? '+' : ''}${value.toFixed(2).replace('.', decimal)}`;
}

function cellOf({ isQuoted, delimiter }: Dialect, cell: string): string {
  return isQuoted && delimiter !== 'blanks' ? `"${cell}"` : cell;
}

function encoded(encoding: Dialect['encoding'], text: string): Uint8Array<ArrayBuffer> {
  if (encoding === 'utf-16le') return new Uint8Array(Buffer.from(`\ufeff${text}`, 'utf16le'));
  // The letters used are the same in Latin-1.
  if (encoding === 'windows-1252') return new Uint8Array(Buffer.from(text, 'latin1'));
  return new TextEncoder().encode(encoding === 'utf-8-mark' ? `\ufeff${text}` : text);
}
