import { type Air, SALT, STRIDE } from './plant';
import { REACH } from './reach';
import { read, type Signal, slopeFrom } from './signal';
import type { Watch } from './watch';

/** A number of the state; a node's salt over its water; anything else, asked signal by signal. */
const NUMBER = 0;
const RATIO = 1;
const OTHER = 2;

/**
 * What is watched: each quantity once, however many watches compare it. After every step a quantity is held against the
 * nearest thresholds above and below it, and its watches are only looked at when one of them may have been reached.
 */
export interface Gauges {
  count: number;
  kind: Uint8Array;
  /** Place in the state of a number, of a node's first number for a ratio. */
  at: Int32Array;
  signals: Signal[];
  /** Rows of the watches of each gauge. */
  rows: Int32Array[];
  /** No watch of the gauge changes while it reads between these. */
  low: Float64Array;
  high: Float64Array;
  /** Readings at the beginning and at the end of the step under consideration. */
  from: Float64Array;
  to: Float64Array;
  /** Slopes there of what is asked signal by signal, per second; NaN where they have not been asked for. */
  slopeFrom: Float64Array;
  slopeTo: Float64Array;
}

/** Gauges for some watches; a lost signal needs none, because it compares with nothing. */
export function gaugesOf(watches: readonly Watch[]): Gauges {
  const found = new Map<string | Signal, { signal: Signal; rows: number[] }>();
  for (const [row, { signal }] of watches.entries()) {
    if (signal.kind === 'lost') continue;
    const id = idOf(signal);
    const gauge = found.get(id) ?? { signal, rows: [] };
    gauge.rows.push(row);
    found.set(id, gauge);
  }
  const list = [...found.values()];
  const kinds = list.map(({ signal }) => kindOf(signal));
  return {
    count: list.length,
    kind: Uint8Array.from(kinds),
    at: Int32Array.from(list, ({ signal }, g) => (kinds[g] === RATIO ? STRIDE * signal.index : signal.index)),
    signals: list.map(({ signal }) => signal),
    rows: list.map(({ rows }) => Int32Array.from(rows)),
    low: new Float64Array(list.length),
    high: new Float64Array(list.length),
    from: new Float64Array(list.length),
    to: new Float64Array(list.length),
    slopeFrom: new Float64Array(list.length).fill(Number.NaN),
    slopeTo: new Float64Array(list.length).fill(Number.NaN),
  };
}

function kindOf(signal: Signal): number {
  if (signal.kind === 'linear') return NUMBER;
  return signal.kind === 'salinity' ? RATIO : OTHER;
}

/** Same quantity, same name; scale and offset of the common kinds belong to the watch. */
function idOf(signal: Signal): string | Signal {
  return kindOf(signal) === OTHER ? signal : `${signal.kind} ${signal.index}`;
}

/** What a gauge's reading is multiplied with, and what is added, to give a signal's own value. */
export function scaleOf(signal: Signal): { scale: number; offset: number } {
  return kindOf(signal) === OTHER ? { scale: 1, offset: 0 } : { scale: signal.scale, offset: signal.offset };
}

/** Read every gauge at a state into `out`; of a law that is known to lie below all its thresholds, only what it stays under. */
export function readGauges(gauges: Gauges, x: Float64Array, air: Air, out: Float64Array): void {
  const { count, kind, at } = gauges;
  for (let g = 0; g < count; g++) {
    const i = at[g] as number;
    if (kind[g] === NUMBER) out[g] = x[i] as number;
    else if (kind[g] === RATIO) out[g] = (x[i + SALT] as number) / (x[i] as number);
    else out[g] = readLaw(gauges, g, x, air);
  }
}

/** The far end of a step becomes the near end of the next one. */
export function swapEnds(gauges: Gauges): void {
  [gauges.from, gauges.to] = [gauges.to, gauges.from];
  [gauges.slopeFrom, gauges.slopeTo] = [gauges.slopeTo, gauges.slopeFrom];
}

function readLaw(gauges: Gauges, g: number, x: Float64Array, air: Air): number {
  const signal = gauges.signals[g] as Signal;
  const ceiling = signal.law?.ceiling;
  if (ceiling && (gauges.low[g] as number) === Number.NEGATIVE_INFINITY) {
    const most = ceiling.factor * (x[ceiling.index] as number);
    if (most < (gauges.high[g] as number) && (x[ceiling.warmth] as number) < ceiling.below) return most;
  }
  return read(signal, x, air);
}

/** The reading itself of a gauge that may have been read as what it stays under. */
export function readFully(gauges: Gauges, g: number, reading: number, x: Float64Array, air: Air): number {
  const signal = gauges.signals[g] as Signal;
  return signal.law?.ceiling ? read(signal, x, air) : reading;
}

/** One end of a step: the state and its rates there. */
interface StepEnd {
  x: Float64Array;
  f: Float64Array;
}

/** Whether a gauge can be known, without asking its law, to stay below its nearest threshold through a step of length h, s. */
export function staysUnder(gauges: Gauges, g: number, h: number, a: StepEnd, b: StepEnd): boolean {
  if (gauges.kind[g] !== OTHER || (gauges.low[g] as number) > Number.NEGATIVE_INFINITY) return false;
  const ceiling = (gauges.signals[g] as Signal).law?.ceiling;
  if (!ceiling) return false;
  const { index, factor, warmth, below } = ceiling;
  return topOf(warmth, h, a, b) < below && factor * topOf(index, h, a, b) < (gauges.high[g] as number);
}

/** A number of the state is nowhere in a step above this. */
function topOf(i: number, h: number, a: StepEnd, b: StepEnd): number {
  const rise = Math.max(0, h * (a.f[i] as number)) + Math.max(0, -h * (b.f[i] as number));
  return Math.max(a.x[i] as number, b.x[i] as number) + REACH * rise;
}

/**
 * Slope of gauge g in time, per second.
 * @param reading  what it reads in full at this state
 * @param known    slopes already asked for at it; receives this one
 */
export function gaugeSlope(
  gauges: Gauges,
  g: number,
  reading: number,
  known: Float64Array,
  x: Float64Array,
  f: Float64Array,
  air: Air,
): number {
  const i = gauges.at[g] as number;
  if (gauges.kind[g] === NUMBER) return f[i] as number;
  if (gauges.kind[g] === OTHER) {
    if (Number.isNaN(known[g] as number)) known[g] = slopeFrom(reading, gauges.signals[g] as Signal, x, f, air);
    return known[g] as number;
  }
  const volume = x[i] as number;
  return ((f[i + SALT] as number) - ((x[i + SALT] as number) * (f[i] as number)) / volume) / volume;
}
