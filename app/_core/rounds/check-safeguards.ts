import { standingOf } from '../plans/due';
import type { Safeguard } from '../plans/safeguard';
import type { Check, TestCheck } from './check';
import words from './check-words.json';

/**
 * The line of a safeguard whose test is due by a day: none while it counts, and none while it is off, for it is not there to
 * be tested.
 * @param system key of its system; null for one of the site
 * @param day ISO date
 */
export function safeguardChecks(system: string | null, safeguard: Safeguard, day: string): Check[] {
  const { due } = standingOf(safeguard, day);
  const check = due !== null && due > day ? null : testCheck(system, safeguard, day);
  return check ? [{ ...check, what: `Test due: ${safeguard.name}` }] : [];
}

/** The line of the test of a safeguard, due or not; null while it is off. */
export function testCheck(system: string | null, safeguard: Safeguard, day: string): TestCheck | null {
  const { state, last } = standingOf(safeguard, day);
  if (state === 'off') return null;
  return {
    kind: 'test',
    key: `${system ?? '-'}/safeguard/${safeguard.key}`,
    about: { noun: 'safeguard', system, key: safeguard.key },
    what: `Test: ${safeguard.name}`,
    why: words.lines.test,
    safeguard: safeguard.kind,
    everyDays: safeguard.testEveryDays,
    last,
  };
}
