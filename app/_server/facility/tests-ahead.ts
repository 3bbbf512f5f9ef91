import 'server-only';
import type { Facility } from '#core/facility/facility';
import type { Path } from '#core/facility/path';
import type { Safeguard } from '#core/plans/safeguard';
import { dayIn } from '../local-day';

/**
 * Tests of safeguards dated after the day at the site: one would begin to count when its day comes, though nobody tests
 * anything then.
 *
 * @param at   the instant
 * @returns    where each stands, and what is wrong with it
 */
export function testsAhead({ site, safeguards, systems }: Facility, at: Date): { path: Path; message: string }[] {
  const today = dayIn(site.zone, at);
  const message = `must not be after today, ${today}`;
  const inList = (list: readonly Safeguard[], path: Path) =>
    list.flatMap(({ tests }, safeguard) =>
      tests.flatMap(({ on }, test) =>
        on > today ? [{ path: [...path, 'safeguards', safeguard, 'tests', test, 'on'], message }] : [],
      ),
    );
  return [
    ...inList(safeguards, []),
    ...systems.flatMap((system, index) => inList(system.safeguards, ['systems', index])),
  ];
}
