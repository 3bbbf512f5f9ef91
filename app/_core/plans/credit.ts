import type { Facility } from '../facility/facility';
import type { System } from '../facility/system';
import { daysBetween } from '../time/days';
import type { Judged } from './missed';
import type { Safeguard, SafeguardTest } from './safeguard';

/** The two columns: every safeguard as claimed, or only those tested within their interval. */
export type Column = 'claimed' | 'tested';

/** Says whether a safeguard is counted on; a line that names none asks with `undefined`. */
export type Credit = (safeguard: string | undefined) => boolean;

/** Its latest test on or before an ISO date; null when there is none. */
export function lastTest(safeguard: Safeguard, on: string): SafeguardTest | null {
  let last: SafeguardTest | null = null;
  for (const test of safeguard.tests) if (test.on <= on && (last === null || test.on >= last.on)) last = test;
  return last;
}

/**
 * Whether a safeguard counts as tested on a day: its last test worked, is no older than its interval, and no test that was due
 * on a round sheet was missed since.
 * @param on ISO date
 */
export function isTested(safeguard: Safeguard, on: string): boolean {
  const last = lastTest(safeguard, on);
  const counts = last !== null && last.result === 'worked' && daysBetween(last.on, on) <= safeguard.testEveryDays;
  return counts && !isMissed(safeguard, last.on, on);
}

/** Whether a test of it was missed by a day, and not made good since. */
function isMissed({ missed }: Judged, lastOn: string, on: string): boolean {
  return missed !== undefined && missed.since <= on && lastOn < missed.opened;
}

/** Whether a safeguard is off on an ISO date; both ends belong to it. */
export function isOff(safeguard: Safeguard, on: string): boolean {
  return safeguard.off !== undefined && safeguard.off.since <= on && on <= safeguard.off.until;
}

/** Every safeguard a system can lean on: its own and the site's. */
export function safeguardsOf(facility: Facility, system: System): Safeguard[] {
  return [...system.safeguards, ...facility.safeguards];
}

/**
 * What is counted on in a column. As claimed: everything that is not off (a line without a ledger is a claim as well).
 * As tested: only what has a ledger with a test that worked within its interval.
 * @param on ISO date the tests are judged on
 */
export function creditOf(facility: Facility, system: System, column: Column, on: string): Credit {
  const known = new Map(safeguardsOf(facility, system).map((s) => [s.key, s]));
  return (key) => {
    const safeguard = key === undefined ? undefined : known.get(key);
    if (!safeguard) return column === 'claimed';
    if (isOff(safeguard, on)) return false;
    return column === 'claimed' || isTested(safeguard, on);
  };
}
