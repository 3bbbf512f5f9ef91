import { type Gauges, gaugeSlope, gaugesOf, readFully, readGauges, scaleOf } from './gauges';
import type { Air } from './plant';
import type { Watch } from './watch';

/**
 * All watches of a run as rows of numbers, because they are looked at after every step: a row says how far its watch is past
 * its next threshold as a × reading of its gauge + b. Above 0 it must change; −∞ when it never will.
 */
export interface WatchTable {
  watches: readonly Watch[];
  rows: Map<Watch, number>;
  gauges: Gauges;
  /** Gauge of each row; −1 for a lost signal. */
  gaugeOf: Int32Array;
  a: Float64Array;
  b: Float64Array;
  /** 1 when nothing more is wanted of a watch. */
  retired: Uint8Array;
}

/** A table over a machine's watches. */
export function watchTable(watches: readonly Watch[]): WatchTable {
  const n = watches.length;
  const gauges = gaugesOf(watches);
  const table: WatchTable = {
    watches,
    rows: new Map(watches.map((w, i) => [w, i])),
    gauges,
    gaugeOf: new Int32Array(n).fill(-1),
    a: new Float64Array(n),
    b: new Float64Array(n).fill(Number.NEGATIVE_INFINITY),
    retired: new Uint8Array(n),
  };
  for (let g = 0; g < gauges.count; g++) {
    for (const row of gauges.rows[g] as Int32Array) {
      table.gaugeOf[row] = g;
      setRow(table, row);
    }
    setBounds(table, g);
  }
  return table;
}

/** Bring a row up to date after its watch has changed. */
export function renew(table: WatchTable, w: Watch): void {
  const row = table.rows.get(w);
  const g = row === undefined ? -1 : (table.gaugeOf[row] as number);
  if (row === undefined || g < 0) return;
  setRow(table, row);
  setBounds(table, g);
}

/** Look at a watch no more: all that it could tell is known. */
export function retire(table: WatchTable, w: Watch): void {
  const row = table.rows.get(w);
  if (row === undefined) return;
  table.retired[row] = 1;
  renew(table, w);
}

function setRow(table: WatchTable, row: number): void {
  const w = table.watches[row] as Watch;
  const done = (w.active && w.latched) || table.retired[row] === 1;
  const toward = w.active ? -w.sign : w.sign;
  const { scale, offset } = scaleOf(w.signal);
  table.a[row] = done ? 0 : toward * scale;
  table.b[row] = done ? Number.NEGATIVE_INFINITY : toward * (offset - (w.active ? w.off : w.on));
}

function setBounds({ gauges, a, b }: WatchTable, g: number): void {
  let low = Number.NEGATIVE_INFINITY;
  let high = Number.POSITIVE_INFINITY;
  const rows = gauges.rows[g] as Int32Array;
  for (let r = 0; r < rows.length; r++) {
    const row = rows[r] as number;
    const slope = a[row] as number;
    const threshold = -(b[row] as number) / slope;
    if (slope > 0 && threshold < high) high = threshold;
    else if (slope < 0 && threshold > low) low = threshold;
  }
  gauges.low[g] = low;
  gauges.high[g] = high;
}

/** How far row i is past its next threshold at a reading of its gauge. */
export function past(table: WatchTable, row: number, reading: number): number {
  return (table.a[row] as number) * reading + (table.b[row] as number);
}

/** Read every gauge at the present state; all that follows is asked of that. */
export function look(table: WatchTable, x: Float64Array, air: Air): void {
  readGauges(table.gauges, x, air, table.gauges.from);
  table.gauges.slopeFrom.fill(Number.NaN);
}

/** Rows past their thresholds where the gauges stand, in order. */
export function pastRows(table: WatchTable): number[] {
  const { count, rows, low, high, from } = table.gauges;
  const found: number[] = [];
  for (let g = 0; g < count; g++) {
    const reading = from[g] as number;
    if (reading >= (low[g] as number) && reading <= (high[g] as number)) continue;
    for (const row of rows[g] as Int32Array) if (past(table, row, reading) > 0) found.push(row);
  }
  return found.sort((one, other) => one - other);
}

/** Rows that will be past their thresholds within a time, s, if all goes on as it does; in order. */
export function rowsWithin(table: WatchTable, timeS: number, x: Float64Array, f: Float64Array, air: Air): number[] {
  const { count, rows, low, high, from, slopeFrom } = table.gauges;
  const found: number[] = [];
  for (let g = 0; g < count; g++) {
    const reading = readFully(table.gauges, g, from[g] as number, x, air);
    const slope = gaugeSlope(table.gauges, g, reading, slopeFrom, x, f, air);
    const then = reading + timeS * slope;
    if (then >= (low[g] as number) && then <= (high[g] as number)) continue;
    for (const row of rows[g] as Int32Array) {
      const rising = (table.a[row] as number) * slope;
      if (rising > 0 && past(table, row, reading) + timeS * rising > 0) found.push(row);
    }
  }
  return found.sort((one, other) => one - other);
}
