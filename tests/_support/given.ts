import type { Figure } from '#core/facility/figure';

/** Overrides for a builder: any field, and a plain number wherever the noun holds a `Figure` (it counts as entered). */
export type Given<T> = { [K in keyof T]?: T[K] | (Figure extends T[K] ? number : never) };

/** Fields that are numbers in the description itself, not figures with a provenance. */
const PLAIN_NUMBERS = new Set(['count', 'testEveryDays', 'delayS', 'deadBand', 'afterMin']);

/** A figure somebody entered. */
export function entered(value: number, more: Partial<Omit<Figure, 'value'>> = {}): Figure {
  return { value, origin: 'entered', ...more };
}

/** A figure nobody knows. */
export function unknown(): Figure {
  return { value: null, origin: 'unknown' };
}

/**
 * The base noun with what a test states laid over it. A field given as `undefined` is taken away.
 */
export function fill<T extends object>(base: T, given: Given<T>): T {
  const out = { ...base } as Record<string, unknown>;
  for (const [name, value] of Object.entries(given)) {
    if (value === undefined) delete out[name];
    else out[name] = typeof value === 'number' && !PLAIN_NUMBERS.has(name) ? entered(value) : value;
  }
  return out as T;
}
