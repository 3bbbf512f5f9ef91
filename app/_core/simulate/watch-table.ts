import type { Air } from './plant';
import { readSlope } from './signal';
import { pastThreshold, type Watch } from './watch';

/**
 * All watches of a run as rows of numbers, because they are looked at after every step. A row of a linear signal gives
 * how far the watch is past its next threshold as a·x[index] + b; the others are asked one by one.
 */
export interface WatchTable {
  watches: Watch[];
  rows: Map<Watch, number>;
  /** 1 where a·x + b holds. */
  linear: Uint8Array;
  index: Int32Array;
  a: Float64Array;
  b: Float64Array;
  /** Past its threshold at the beginning and at the end of the step under consideration. */
  from: Float64Array;
  to: Float64Array;
}

/** A table over a machine's watches. */
export function watchTable(watches: Watch[]): WatchTable {
  const n = watches.length;
  const table: WatchTable = {
    watches,
    rows: new Map(watches.map((w, i) => [w, i])),
    linear: new Uint8Array(n),
    index: new Int32Array(n),
    a: new Float64Array(n),
    b: new Float64Array(n),
    from: new Float64Array(n),
    to: new Float64Array(n),
  };
  for (const w of watches) renew(table, w);
  return table;
}

/** Bring a row up to date after its watch has changed. */
export function renew(table: WatchTable, w: Watch): void {
  const i = table.rows.get(w);
  if (i === undefined) return;
  const done = w.active && w.latched;
  const toward = w.active ? -w.sign : w.sign;
  table.linear[i] = done || w.signal.kind === 'linear' ? 1 : 0;
  table.index[i] = w.signal.index;
  table.a[i] = done ? 0 : toward * w.signal.scale;
  table.b[i] = done ? Number.NEGATIVE_INFINITY : toward * (w.signal.offset - (w.active ? w.off : w.on));
}

/** How far every watch is past its next threshold, into `out`. */
export function evaluate(table: WatchTable, x: Float64Array, air: Air, out: Float64Array): void {
  const { watches, linear, index, a, b } = table;
  for (let i = 0; i < watches.length; i++) {
    out[i] =
      linear[i] === 1
        ? (a[i] as number) * (x[index[i] as number] as number) + (b[i] as number)
        : pastThreshold(watches[i] as Watch, x, air);
  }
}

/** Slope of row i in time, per second. */
export function rowSlope(table: WatchTable, i: number, x: Float64Array, f: Float64Array, air: Air): number {
  if (table.linear[i] === 1) return (table.a[i] as number) * (f[table.index[i] as number] as number);
  const w = table.watches[i] as Watch;
  return (w.active ? -w.sign : w.sign) * readSlope(w.signal, x, f, air);
}
