import type { Figure } from '../../../facility/figure';
import type { Safeguard, SafeguardKind } from '../../../plans/safeguard';

/** The day the examples are judged on. */
export const EXAMPLE_DAY = '2026-06-01';

/** A figure somebody entered. */
export function entered(value: number): Figure {
  return { value, origin: 'entered' };
}

/** A safeguard that was tested three months before the examples are judged, and worked. */
export function proven(key: string, name: string, kind: SafeguardKind): Safeguard {
  return { key, name, kind, testEveryDays: 180, tests: [{ on: '2026-03-02', result: 'worked' }] };
}
