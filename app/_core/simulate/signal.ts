import type { Vote } from '../plans/plan';
import { type Air, SALT, STRIDE } from './plant';

/**
 * What a probe reports. `linear` reads one number of the state (scale × x + offset); `salinity` a node's salt over its
 * water; `law` what a law makes of several numbers; `air` the room (a probe out of the water); `constant` a stuck one; `lost` nothing
 * at all (NaN); `vote` several.
 */
export interface Signal {
  kind: 'linear' | 'salinity' | 'law' | 'air' | 'constant' | 'lost' | 'vote';
  index: number;
  scale: number;
  offset: number;
  of: Signal[];
  vote: Vote;
  law: StateLaw | null;
}

/** What a law never exceeds: a number of the state times a factor, as long as another (a temperature) stays below a bound. */
export interface Ceiling {
  index: number;
  factor: number;
  warmth: number;
  below: number;
}

/** A law of the state: its value, the numbers it depends on, what it stays under, and room for a state a little beside. */
export interface StateLaw {
  ceiling: Ceiling | null;
  of: (x: Float64Array) => number;
  reads: readonly number[];
  beside: Float64Array;
}

/** Slope of a signal with one number of the state. */
export interface Entry {
  index: number;
  slope: number;
}

function signal(kind: Signal['kind'], index: number, scale: number, offset: number): Signal {
  return { kind, index, scale, offset, of: [], vote: 'single', law: null };
}

/** Reads scale × x[index] + offset. */
export function linear(index: number, scale = 1, offset = 0): Signal {
  return signal('linear', index, scale, offset);
}

/** Practical salinity of a node, at the plant's density (kg/m³), plus an offset. */
export function salinity(node: number, density: number, offset = 0): Signal {
  return signal('salinity', node, 1000 / density, offset);
}

/**
 * Reads what a law makes of the state, plus an offset.
 * @param reads indices of all numbers it depends on
 * @param size length of the state
 * @param ceiling what it never exceeds, where that is cheaper to know; only without offset
 */
export function lawful(
  of: (x: Float64Array) => number,
  reads: readonly number[],
  size: number,
  offset = 0,
  ceiling: Ceiling | null = null,
): Signal {
  return { ...signal('law', reads[0] ?? 0, 1, offset), law: { of, reads, ceiling, beside: new Float64Array(size) } };
}

/** Reads the room's air, °C: a probe that hangs out of the water. */
export function inAir(): Signal {
  return signal('air', 0, 1, 0);
}

/** Always the same value. */
export function constant(value: number): Signal {
  return signal('constant', 0, 0, value);
}

/** Nothing usable; every comparison with it is false. */
export function lost(): Signal {
  return signal('lost', 0, 0, Number.NaN);
}

/** Several signals as one: median (the mean of the middle two when even), highest or lowest; lost ones have no vote. */
export function voted(of: Signal[], vote: Vote): Signal {
  const alive = of.filter((s) => s.kind !== 'lost');
  if (alive.length === 0) return lost();
  if (alive.length === 1) return alive[0] as Signal;
  return { kind: 'vote', index: 0, scale: 1, offset: 0, of: alive, vote, law: null };
}

/** Value of a signal, in its own unit; NaN when lost. */
export function read(s: Signal, x: Float64Array, air: Air): number {
  switch (s.kind) {
    case 'linear':
      return s.scale * (x[s.index] as number) + s.offset;
    case 'salinity':
      return (s.scale * (x[STRIDE * s.index + SALT] as number)) / (x[STRIDE * s.index] as number) + s.offset;
    case 'law':
      return s.law ? s.law.of(x) + s.offset : Number.NaN;
    case 'air':
      return air.temperature;
    case 'constant':
    case 'lost':
      return s.offset;
    case 'vote':
      return decide(
        s.of.map((one) => read(one, x, air)),
        s.vote,
      );
  }
}

/** Slope of a signal in time, per second, from the rates of the state. */
export function readSlope(s: Signal, x: Float64Array, dx: Float64Array, air: Air): number {
  switch (s.kind) {
    case 'linear':
      return s.scale * (dx[s.index] as number);
    case 'salinity': {
      const at = STRIDE * s.index;
      const volume = x[at] as number;
      return (
        (s.scale * ((dx[at + SALT] as number) - ((x[at + SALT] as number) * (dx[at] as number)) / volume)) / volume
      );
    }
    case 'law':
      return s.law ? lawSlope(s.law, x, dx) : 0;
    case 'air':
      return air.temperatureSlope;
    case 'constant':
    case 'lost':
      return 0;
    case 'vote':
      return votedSlope(s, x, dx, air);
  }
}

/** s to either side of now from which the slope of a law in time is taken. */
const BESIDE_S = 1;

function lawSlope(law: StateLaw, x: Float64Array, dx: Float64Array): number {
  return (lawBeside(law, BESIDE_S, x, dx) - lawBeside(law, -BESIDE_S, x, dx)) / (2 * BESIDE_S);
}

/** What a law makes of the state a little later, or earlier, s. */
function lawBeside({ of, reads, beside }: StateLaw, byS: number, x: Float64Array, dx: Float64Array): number {
  for (let i = 0; i < reads.length; i++) {
    const at = reads[i] as number;
    beside[at] = (x[at] as number) + byS * (dx[at] as number);
  }
  return of(beside);
}

/**
 * Slope in time of a signal whose value is known, per second: for a law that costs one more look at it, and not two. To where
 * a second takes it the law runs straight enough to find what may be crossed.
 */
export function slopeFrom(value: number, s: Signal, x: Float64Array, dx: Float64Array, air: Air): number {
  if (s.kind !== 'law' || !s.law) return readSlope(s, x, dx, air);
  return (lawBeside(s.law, BESIDE_S, x, dx) + s.offset - value) / BESIDE_S;
}

/** Part of a number by which it is shifted for the slope of a law, and the least shift. */
const SHARE = 3e-5;
const LEAST = 1e-9;

/** Slopes of a signal with the numbers of the state it reads, at a state; a vote has none. */
export function gradient(s: Signal, x: Float64Array): Entry[] {
  switch (s.kind) {
    case 'linear':
      return [{ index: s.index, slope: s.scale }];
    case 'salinity': {
      const at = STRIDE * s.index;
      const volume = x[at] as number;
      return [
        { index: at + SALT, slope: s.scale / volume },
        { index: at, slope: (-s.scale * (x[at + SALT] as number)) / (volume * volume) },
      ];
    }
    case 'law':
      return s.law ? lawGradient(s.law, x) : [];
    case 'air':
    case 'constant':
    case 'lost':
    case 'vote':
      return [];
  }
}

function lawGradient({ of, reads, beside }: StateLaw, x: Float64Array): Entry[] {
  for (const i of reads) beside[i] = x[i] as number;
  return reads.map((index) => {
    const value = x[index] as number;
    const shift = Math.max(LEAST, SHARE * Math.abs(value));
    beside[index] = value + shift;
    const above = of(beside);
    beside[index] = value - shift;
    const slope = (above - of(beside)) / (2 * shift);
    beside[index] = value;
    return { index, slope };
  });
}

function decide(values: number[], vote: Vote): number {
  const sorted = [...values].sort((a, b) => a - b);
  const last = sorted.length - 1;
  if (vote === 'highest') return sorted[last] as number;
  if (vote === 'lowest') return sorted[0] as number;
  return ((sorted[Math.floor(last / 2)] as number) + (sorted[Math.ceil(last / 2)] as number)) / 2;
}

function votedSlope(s: Signal, x: Float64Array, dx: Float64Array, air: Air): number {
  const sorted = s.of.map((one) => ({ one, value: read(one, x, air) })).sort((a, b) => a.value - b.value);
  const last = sorted.length - 1;
  const slopeOf = (i: number) => readSlope((sorted[i] as { one: Signal }).one, x, dx, air);
  if (s.vote === 'highest') return slopeOf(last);
  if (s.vote === 'lowest') return slopeOf(0);
  return (slopeOf(Math.floor(last / 2)) + slopeOf(Math.ceil(last / 2))) / 2;
}
