import type { Vote } from '../plans/plan';
import { type Air, SALT, STRIDE } from './plant';

/**
 * What a probe reports. `linear` reads one number of the state (scale × x + offset); `salinity` a node's salt over its
 * water; `air` the room (a probe out of the water); `constant` a stuck one; `lost` nothing at all (NaN); `vote` several.
 */
export interface Signal {
  kind: 'linear' | 'salinity' | 'air' | 'constant' | 'lost' | 'vote';
  index: number;
  scale: number;
  offset: number;
  of: Signal[];
  vote: Vote;
}

function signal(kind: Signal['kind'], index: number, scale: number, offset: number): Signal {
  return { kind, index, scale, offset, of: [], vote: 'single' };
}

/** Reads scale × x[index] + offset. */
export function linear(index: number, scale = 1, offset = 0): Signal {
  return signal('linear', index, scale, offset);
}

/** Practical salinity of a node, at the plant's density (kg/m³), plus an offset. */
export function salinity(node: number, density: number, offset = 0): Signal {
  return signal('salinity', node, 1000 / density, offset);
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
  return { kind: 'vote', index: 0, scale: 1, offset: 0, of: alive, vote };
}

/** Value of a signal, in its own unit; NaN when lost. */
export function read(s: Signal, x: Float64Array, air: Air): number {
  switch (s.kind) {
    case 'linear':
      return s.scale * (x[s.index] as number) + s.offset;
    case 'salinity':
      return (s.scale * (x[STRIDE * s.index + SALT] as number)) / (x[STRIDE * s.index] as number) + s.offset;
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
    case 'air':
      return air.temperatureSlope;
    case 'constant':
    case 'lost':
      return 0;
    case 'vote':
      return votedSlope(s, x, dx, air);
  }
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
