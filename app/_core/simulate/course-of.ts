import { airAt, stillAir } from './air';
import type { Machine } from './machine';
import { type Air, SALT, STRIDE } from './plant';
import { read, type Signal } from './signal';
import type { Record } from './world';

const HOUR = 3600;
const DAY = 86_400;

/**
 * What a signal showed in the course of a run, or how far the first of two stood above the other.
 *
 * @param clockS   local time of day at its beginning, s
 * @returns        at a time, s after its beginning; NaN for one that is lost
 */
export function courseOf(
  { record: { knots }, machine }: { record: Pick<Record, 'knots'>; machine: Machine },
  clockS: number,
  of: readonly Signal[],
): (t: number) => number {
  const reads = [...new Set(of.flatMap(numbersOf))];
  const x = new Float64Array(machine.plant.size);
  const air: Air = stillAir();
  return (t) => {
    const i = knots.before(t);
    for (const index of reads) x[index] = knots.between(i, index, t);
    const now = clockS + t;
    airAt(machine.room, now, Math.floor((now % DAY) / HOUR) % 24, air);
    const [first = Number.NaN, second] = of.map((signal) => read(signal, x, air));
    return second === undefined ? first : first - second;
  };
}

/** Numbers of the state that a signal reads. */
function numbersOf(signal: Signal): readonly number[] {
  switch (signal.kind) {
    case 'linear':
      return [signal.index];
    case 'salinity':
      return [STRIDE * signal.index, STRIDE * signal.index + SALT];
    case 'law':
      return signal.law?.reads ?? [];
    case 'vote':
      return signal.of.flatMap(numbersOf);
    case 'air':
    case 'constant':
    case 'lost':
      return [];
  }
}
