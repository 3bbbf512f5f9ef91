import { DAYS } from '#core/facility/site';
import type { Person, Shift } from '#core/rota/rota';
import fc from 'fast-check';
import { person, shift } from '../../_support/build-facility';

const KEYS = ['ada', 'ben', 'cleo'] as const;

/** A time of day to the minute, "HH:MM". */
export function anyTimeOfDay(): fc.Arbitrary<string> {
  const two = (n: number) => String(n).padStart(2, '0');
  return fc.integer({ min: 0, max: 1439 }).map((m) => `${two(Math.floor(m / 60))}:${two(m % 60)}`);
}

/** Three people, each with a way of their own. */
export function anyPeople(): fc.Arbitrary<Person[]> {
  const way = fc.integer({ min: 0, max: 600 });
  return fc
    .tuple(way, way, way)
    .map((ways) => KEYS.map((key, i) => person({ key, name: key, travelMin: ways[i] ?? 0 })));
}

/** A shift of one or more of them, on any days, over midnight or not. */
export function anyShift(key: string): fc.Arbitrary<Shift> {
  return fc
    .record({
      kind: fc.constantFrom('on-site' as const, 'on-call' as const),
      people: fc.subarray([...KEYS], { minLength: 1 }),
      days: fc.subarray([...DAYS], { minLength: 1 }),
      from: anyTimeOfDay(),
      to: anyTimeOfDay(),
    })
    .map((given) => shift({ key, ...given }));
}

/** Up to four shifts, or none at all. */
export function anyShifts(): fc.Arbitrary<Shift[]> {
  return fc
    .integer({ min: 0, max: 4 })
    .chain((n) => fc.tuple(...Array.from({ length: n }, (_, i) => anyShift(`s${i}`))));
}
