import type { Facility } from '#core/facility/facility';
import type { SafeguardTest } from '#core/plans/safeguard';
import { instantOf } from '#core/time/zone';
import { type Placed, testsAfter } from './as-of';
import { idFor } from './seeded-id';

/** When on its day a test is written down. */
const WRITTEN_AT = '16:20';

/** A test that was written into a ledger. */
export interface PastTest extends Placed {
  id: string;
  atMs: number;
  test: SafeguardTest;
  /** Key of the person who looked; null for somebody who is not of the rota. */
  person: string | null;
}

/** The tests of safeguards since a day, in order. @param since ISO date; `untilMs` now */
export function pastTests(facility: Facility, since: string, untilMs: number): PastTest[] {
  const { key, zone } = facility.site;
  return testsAfter(facility, since).map(({ system, safeguard, test }) => {
    const atMs = Math.min(instantOf(zone, test.on, WRITTEN_AT), untilMs);
    const person = facility.people.find(({ name }) => name === test.by)?.key ?? null;
    return { system, safeguard, test, person, atMs, id: idFor(atMs, key, system ?? '-', safeguard, test.on) };
  });
}
