import 'server-only';
import type { OrderNotes } from '#core/readings/file/order-rows';
import type { RowFault } from '#core/readings/file/turn-row';

/** A reading that was not stored because another value stands at its instant. */
export interface Conflict {
  line: number;
  sensor: string;
  /** UTC, ISO. */
  at: string;
  value: number;
}

/** What came of the readings of one sensor. */
export interface SensorOutcome {
  sensor: string;
  stored: number;
  repeats: number;
  conflicts: number;
  suspect: number;
  bad: number;
}

/** What came of a file. */
export interface Outcome {
  rows: number;
  /** Readings, each of one sensor. */
  stored: number;
  repeats: number;
  conflicts: number;
  /** Rows whose time, and cells whose value, could not be read. */
  refused: number;
  /** Cells that say that there is no reading. */
  missing: number;
  /** Of the first and the last reading, UTC, ISO; null when there is none. */
  from: string | null;
  to: string | null;
  order: OrderNotes;
  sensors: SensorOutcome[];
  firstConflicts: Conflict[];
  firstRefused: RowFault[];
}

/** Conflicts and refusals of which the place is told. */
export const TOLD = 20;

/** Nothing has come of it yet. */
export function emptyOutcome(order: OrderNotes): Outcome {
  return {
    rows: 0,
    stored: 0,
    repeats: 0,
    conflicts: 0,
    refused: 0,
    missing: 0,
    from: null,
    to: null,
    order,
    sensors: [],
    firstConflicts: [],
    firstRefused: [],
  };
}
