import { groupBy } from '../group-by';
import type { Overdue } from './standings';

/**
 * What every system of a site has overdue: a round of the whole site that was missed is missed at each of them, and is to be
 * said once, not of every system.
 *
 * @returns   by key of the site; a site with a single system is left out, and one that has nothing overdue everywhere
 */
export function overdueEverywhere(
  systems: readonly { site: { key: string }; now: { checks: Overdue } }[],
): Map<string, Overdue> {
  const shared = new Map<string, Overdue>();
  for (const [site, ones] of groupBy(systems, (one) => one.site.key)) {
    const least = (of: keyof Overdue) => Math.min(...ones.map(({ now }) => now.checks[of]));
    const overdue = { late: least('late'), missed: least('missed') };
    if (ones.length > 1 && overdue.late + overdue.missed > 0) shared.set(site, overdue);
  }
  return shared;
}
