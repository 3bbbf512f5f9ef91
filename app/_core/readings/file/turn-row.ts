import type { SensorQuantity } from '../../facility/system';
import { type Judged, judge, judgeTogether, type Reason } from '../judge';
import type { Quality } from '../reading';
import { QUALITIES } from '../reading';
import { toFacilityUnit } from '../units';
import { type Moment, momentsIn } from './instants';
import type { ColumnLayout, FileLayout, FileRow, FlagMeaning } from './layout';
import { type CellNumber, readNumber } from './read-number';
import { readTime } from './read-time';

/** One value of a row, as it is to be stored. */
export interface RowValue {
  place: number;
  sensor: string;
  /** As it stands in the file. */
  raw: string;
  /** In the facility file's unit. */
  value: number;
  quality: Quality;
  reason?: Reason;
  flag?: string;
}

/** Why something of a row is not taken. */
export interface RowFault {
  line: number;
  /** Column it stands in; null for the whole row. */
  place: number | null;
  says: string;
}

/** What a row says. */
export interface TurnedRow {
  line: number;
  moment: Moment;
  values: RowValue[];
  faults: RowFault[];
  /** Cells that say that there is no reading. */
  missing: number;
}

/**
 * Makes readings of the rows of files of one layout.
 *
 * @param quantityOf   what a sensor measures
 * @param latestMs     no reading can have been taken after it
 * @returns            what a row says; a fault when its time cannot be read
 */
export function rowTurner(
  layout: FileLayout,
  quantityOf: (sensor: string) => SensorQuantity,
  latestMs: number,
): (row: FileRow) => TurnedRow | RowFault {
  const momentOf = momentsIn(layout.zone);
  const missing = new Set(layout.missing.map((word) => word.toLowerCase()));
  const isMissing = (cell: string) => cell === '' || missing.has(cell.toLowerCase());
  return (row) => {
    const { line, cells } = row;
    const time = readTime(cells, layout.time);
    if (!time) return { line, place: null, says: `“${timeCells(row, layout)}” is no time` };
    const moment = 'atMs' in time ? { atMs: time.atMs } : momentOf(time.day, time.dayMs);
    const outside = outsideWords(moment.atMs, latestMs);
    if (outside) return { line, place: null, says: `${timeCells(row, layout)} ${outside}` };
    const isTimeUnknown = layout.midnight === 'unknown' && !('atMs' in time) && (!time.hasClock || time.dayMs === 0);
    const turned: TurnedRow = { line, moment, values: [], faults: [], missing: 0 };
    for (const column of layout.columns) {
      const cell = cells[column.place] ?? '';
      if (isMissing(cell)) turned.missing += 1;
      else addValue(turned, { cell, cells, column, layout, quantity: quantityOf(column.sensor), isTimeUnknown });
    }
    return { ...turned, values: judgedTogether(turned.values, quantityOf) };
  };
}

interface Given {
  cell: string;
  cells: readonly string[];
  column: ColumnLayout;
  layout: FileLayout;
  quantity: SensorQuantity;
  isTimeUnknown: boolean;
}

function addValue(turned: TurnedRow, given: Given): void {
  const { cell, column, layout, quantity } = given;
  const fault = (says: string) => turned.faults.push({ line: turned.line, place: column.place, says });
  const number = readNumber(cell, layout.decimal);
  if (!number) return void fault(`“${cell.slice(0, 60)}” is no number`);
  if (number.value === 0 && !number.isBelow && column.zero === 'missing') {
    turned.missing += 1;
    return;
  }
  const converted = toFacilityUnit(quantity, number.value, column.unit);
  if (!converted.ok) return void fault(`its sensor is not read in ${column.unit}`);
  const flag = column.flag === undefined ? '' : (given.cells[column.flag] ?? '');
  const judged = [
    judge(quantity, converted.value, { value: number.value, unit: column.unit }),
    ownWord(meaningOf(flag, layout), isBelow(number, column)),
    given.isTimeUnknown ? ({ quality: 'suspect', reason: 'time-unknown' } as const) : GOOD,
  ];
  const { place, sensor } = column;
  turned.values.push({ place, sensor, raw: cell, value: converted.value, ...worst(judged), ...(flag ? { flag } : {}) });
}

const GOOD: Judged = { quality: 'good' };

function isBelow({ value, isBelow: isWritten }: CellNumber, { zero }: ColumnLayout): boolean {
  return isWritten || (value === 0 && zero === 'below');
}

/** What a flag says: by its word, or by the least number that is good. One that nobody spoke of makes its value suspect. */
function meaningOf(flag: string, { flags, goodFrom, decimal }: FileLayout): FlagMeaning {
  if (flag === '') return 'good';
  if (Object.hasOwn(flags, flag)) return flags[flag] ?? 'suspect';
  const number = goodFrom === undefined ? null : readNumber(flag, decimal);
  return number !== null && goodFrom !== undefined && number.value >= goodFrom ? 'good' : 'suspect';
}

/** What the file itself says of a value. */
function ownWord(meaning: FlagMeaning, isLimit: boolean): Judged {
  if (meaning === 'bad') return { quality: 'bad', reason: 'flagged-bad' };
  if (meaning === 'below' || isLimit) return { quality: 'suspect', reason: 'below-detection' };
  return meaning === 'suspect' ? { quality: 'suspect', reason: 'flagged' } : GOOD;
}

/** The most doubtful of several judgements; of two as doubtful the first. */
function worst(judged: readonly Judged[]): Judged {
  return judged.reduce((a, b) => (QUALITIES.indexOf(b.quality) > QUALITIES.indexOf(a.quality) ? b : a), GOOD);
}

function judgedTogether(values: RowValue[], quantityOf: (sensor: string) => SensorQuantity): RowValue[] {
  const judged = judgeTogether(values.map((one) => ({ ...one, quantity: quantityOf(one.sensor) })));
  return values.map(({ quality: _q, reason: _r, ...one }, i) => ({ ...one, ...(judged[i] ?? GOOD) }));
}

/** The parts of the readings begin here. */
const EARLIEST_MS = 631_152_000_000;

function outsideWords(atMs: number, latestMs: number): string | null {
  if (atMs > latestMs) return 'lies ahead';
  return atMs < EARLIEST_MS ? 'lies before 1990, from which on readings are kept' : null;
}

function timeCells({ cells }: FileRow, { time }: FileLayout): string {
  const places =
    time.as === 'epoch' ? [time.column] : time.as === 'parts' ? time.columns : [time.date, time.clock ?? -1];
  return places
    .map((place) => cells[place] ?? '')
    .join(' ')
    .trim()
    .slice(0, 60);
}
