/*
 * How the file of a logger is laid out, what can be read off the file itself, and how its rows become readings. Bytes, their
 * encoding and the quotes of a table are the server's. What a file does not say, a person is asked.
 */

/** Letters of a file. What is called windows-1252 takes Latin-1 with it. */
export const ENCODINGS = ['utf-8', 'utf-16le', 'utf-16be', 'windows-1252'] as const;
export type Encoding = (typeof ENCODINGS)[number];

/** What stands between two cells; `blanks` is any number of blanks and tabs, `objects` a list of JSON objects. */
export const DELIMITERS = ['tab', ';', '|', ',', 'blanks', 'objects'] as const;
export type Delimiter = (typeof DELIMITERS)[number];

export const DATE_ORDERS = ['ymd', 'dmy', 'mdy'] as const;
export type DateOrder = (typeof DATE_ORDERS)[number];

/** Where the time of a row stands. Numbers are places of columns, from 0. */
export type TimeLayout =
  /** A date, with its time of day beside it or in a column of its own. */
  | { as: 'text'; date: number; clock?: number; order: DateOrder | null }
  | { as: 'epoch'; column: number; unit: 's' | 'ms' }
  /** Year, month, day, hour, minute and second, as many of them as there are; three or more. */
  | { as: 'parts'; columns: number[] };

/** What a cell that holds exactly 0 says. */
export const ZEROS = ['real', 'missing', 'below'] as const;
export type Zero = (typeof ZEROS)[number];

/** What a flag says of the value it stands beside. Below: the number is the limit of detection, not a measurement. */
export const FLAG_MEANINGS = ['good', 'suspect', 'bad', 'below'] as const;
export type FlagMeaning = (typeof FLAG_MEANINGS)[number];

/** One column that is taken. */
export interface ColumnLayout {
  /** Place of the column, from 0. */
  place: number;
  /** Id of the sensor whose readings they are. */
  sensor: string;
  /** Unit in which they are written. */
  unit: string;
  zero: Zero;
  /** Place of the column that says how good each is. */
  flag?: number;
}

/** How the files of a logger are laid out: everything that has to be known to read one. */
export interface FileLayout {
  encoding: Encoding;
  delimiter: Delimiter;
  /** Names of the columns as the file has them, by which its header is found; none when it has no header. */
  head: string[];
  /** Whether units stand in a row of their own beneath the names. */
  hasUnitsRow: boolean;
  decimal: '.' | ',';
  time: TimeLayout;
  /** IANA zone, or a difference from UTC such as "-04:00", which holds all year. */
  zone: string;
  /** Whether 00:00 is a time of day, or stands where none was written down. */
  midnight: 'real' | 'unknown';
  /** Words that say that there is no reading; an empty cell always does. */
  missing: string[];
  columns: ColumnLayout[];
  /** What each flag says; one that is not here makes its value suspect. */
  flags: Record<string, FlagMeaning>;
  /** Where flags are numbers: the least at which a value is good. Left out, flags are words. */
  goodFrom?: number;
}

/** A row of a file: the line it began on, from 1, and its cells, blanks around them left off. */
export interface FileRow {
  line: number;
  cells: string[];
}

/** What is not known yet of a layout is null. */
export interface ColumnDraft {
  place: number;
  /** Null: not taken. */
  sensor: string | null;
  unit: string | null;
  zero: Zero | null;
  flag: number | null;
}

/** A layout as far as it is known. */
export type LayoutDraft = Omit<FileLayout, 'zone' | 'midnight' | 'columns' | 'goodFrom'> & {
  zone: string | null;
  midnight: 'real' | 'unknown' | null;
  columns: ColumnDraft[];
  goodFrom: number | null;
};
