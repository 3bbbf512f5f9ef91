import { addDays } from '../time/add-days';
import { isOff, isTested, lastTest } from './credit';
import type { Safeguard, SafeguardTest } from './safeguard';

/** How a safeguard stands on a day, and when it has to be tested again. */
export interface Standing {
  state: 'tested' | 'untested' | 'off';
  /** Its latest test by that day; null when there is none. */
  last: SafeguardTest | null;
  /** Last day its latest test counts, ISO date; null when nothing counts: never tested, or it failed. */
  due: string | null;
}

/** How a safeguard stands on an ISO date. */
export function standingOf(safeguard: Safeguard, on: string): Standing {
  const last = lastTest(safeguard, on);
  const state = isOff(safeguard, on) ? 'off' : isTested(safeguard, on) ? 'tested' : 'untested';
  const counts = last?.result === 'worked' ? addDays(last.on, safeguard.testEveryDays) : null;
  // One whose test was missed before its interval was over is due now.
  const isMissed = counts !== null && counts >= on && !isTested(safeguard, on);
  return { state, last, due: isMissed ? null : counts };
}

/** Order of a test calendar: what counts for nothing first, then by the day it is due. */
export function byDue(a: { due: string | null; name: string }, b: { due: string | null; name: string }): number {
  const [first, second] = [a.due ?? '', b.due ?? ''];
  if (first !== second) return first < second ? -1 : 1;
  return a.name < b.name ? -1 : a.name > b.name ? 1 : 0;
}
