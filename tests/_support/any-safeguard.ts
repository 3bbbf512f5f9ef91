import { SAFEGUARD_KINDS, type Safeguard } from '#core/plans/safeguard';
import fc from 'fast-check';
import { anyName, anySourced, anyText, maybe } from './any-figure';

/** A day of the calendar between 2000 and 2090. */
export function anyDate(): fc.Arbitrary<string> {
  const [min, max] = [new Date('2000-01-01'), new Date('2090-12-31')];
  return fc.date({ min, max, noInvalidDate: true }).map((day) => day.toISOString().slice(0, 10));
}

/** One safeguard of each of some kinds; the key follows the owner and the kind. */
export function anySafeguards(owner: string): fc.Arbitrary<Safeguard[]> {
  return fc
    .shuffledSubarray([...SAFEGUARD_KINDS], { minLength: 2 })
    .chain((kinds) => fc.tuple(...kinds.map((kind) => anySafeguard(owner, kind))));
}

function anySafeguard(owner: string, kind: Safeguard['kind']): fc.Arbitrary<Safeguard> {
  const test = fc.record({
    on: anyDate(),
    result: fc.constantFrom('worked', 'failed'),
    by: maybe(anyName()),
    steps: maybe(anyText()),
    expected: maybe(anyText()),
    seen: maybe(anyText()),
  });
  const days = fc.tuple(anyDate(), anyDate()).map((two) => two.sort());
  const off = fc.record({ by: anyName(), why: anyText(), days });
  return fc.record({
    key: fc.constant(`${owner}-${kind}`),
    name: anyName(),
    kind: fc.constant(kind),
    testEveryDays: fc.integer({ min: 1, max: 3650 }),
    tests: fc.array(test, { maxLength: 3 }),
    loud: maybe(fc.boolean()),
    failsOnDemand: maybe(anySourced(0, 1)),
    off: maybe(off.map(({ by, why, days: [since, until] }) => ({ by, why, since, until }))),
  }) as fc.Arbitrary<Safeguard>;
}
