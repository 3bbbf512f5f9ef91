import { standingOf } from '../plans/due';
import type { Safeguard } from '../plans/safeguard';
import type { Check } from './check';
import words from './check-words.json';

/**
 * The line of a safeguard whose test is due by a day: none while it counts, and none while it is off, for it is not there to
 * be tested.
 * @param system key of its system; null for one of the site
 * @param day ISO date
 */
export function safeguardChecks(system: string | null, safeguard: Safeguard, day: string): Check[] {
  const { state, last, due } = standingOf(safeguard, day);
  if (state === 'off' || (due !== null && due > day)) return [];
  return [
    {
      kind: 'test',
      key: `${system ?? '-'}/safeguard/${safeguard.key}`,
      about: { noun: 'safeguard', system, key: safeguard.key },
      what: `Test due: ${safeguard.name}`,
      why: words.lines.test,
      safeguard: safeguard.kind,
      everyDays: safeguard.testEveryDays,
      last,
    },
  ];
}
