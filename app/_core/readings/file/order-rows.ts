import type { TurnedRow } from './turn-row';

/** What the order of the rows of a file told. */
export interface OrderNotes {
  /** Rows at a time that the clocks leap over, put off by the length of the leap. */
  skipped: number;
  /** Rows at a time that the clocks show twice, and how many of them were taken for the second. */
  repeated: number;
  second: number;
  /** Rows that go against the order of the file, and the lines of the first of them. */
  jumps: number;
  jumpLines: number[];
  isNewestFirst: boolean;
}

/** Jumps of which the line is kept. */
const LINES = 5;

/**
 * Follows the rows of a file in their order. Of a time that the clocks show twice the first is meant, unless a row would go
 * back by it and goes on by the second. A row that goes back is told; where it belongs follows from its time.
 *
 * @returns   changes the row's moment where the order decides it
 */
export function followOrder(): { notes: OrderNotes; follow: (row: TurnedRow) => void } {
  const notes: OrderNotes = { skipped: 0, repeated: 0, second: 0, jumps: 0, jumpLines: [], isNewestFirst: false };
  let before: number | null = null;
  let steps = 0;
  const follow = (row: TurnedRow) => {
    const { moment } = row;
    if (moment.isSkipped) notes.skipped += 1;
    if (moment.againMs !== undefined) {
      notes.repeated += 1;
      if (isSecond(moment.atMs, moment.againMs, before, steps === 0 ? null : notes.isNewestFirst)) {
        notes.second += 1;
        moment.atMs = moment.againMs;
      }
    }
    const { atMs } = moment;
    if (before !== null && atMs !== before) {
      // The first step tells which way the file runs.
      if (steps === 0) notes.isNewestFirst = atMs < before;
      else if (atMs < before !== notes.isNewestFirst) {
        notes.jumps += 1;
        if (notes.jumpLines.length < LINES) notes.jumpLines.push(row.line);
      }
      steps += 1;
    }
    before = atMs;
  };
  return { notes, follow };
}

/** @param isNewestFirst   null as long as no step has told which way the file runs */
function isSecond(first: number, second: number, before: number | null, isNewestFirst: boolean | null): boolean {
  if (before === null) return false;
  if (isNewestFirst === null && second < before) return true;
  // Newest first, the second pass comes before the first one; the row above it lies after it.
  return isNewestFirst ? second < before : first <= before && second > before;
}
