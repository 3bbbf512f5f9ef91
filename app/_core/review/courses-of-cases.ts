import type { Facility } from '../facility/facility';
import type { System } from '../facility/system';
import { contextOf } from './context';
import type { FaultCase } from './result';
import { subjectsOf } from './subjects';
import type { CaseTrajectory } from './trajectory';
import { trajectoryOf } from './trajectory-of';

/**
 * The courses of fault cases when nobody comes, each in the column in which it is told: as claimed, unless only as tested
 * anything is harmed.
 *
 * @param on   ISO date on which tests are judged
 * @returns    by id of the case; without those that are not assessed, and those that are no fault cases of the system
 */
export function coursesOfCases(
  facility: Facility,
  system: System,
  on: string,
  cases: readonly FaultCase[],
): Record<string, CaseTrajectory> {
  const context = contextOf(facility, system, on);
  const subjects = new Map(
    subjectsOf(facility, system).map((one) => [`${one.fault.id}:${one.thing.key}:${one.state}`, one]),
  );
  const found = cases.flatMap((c): [string, CaseTrajectory][] => {
    const subject = subjects.get(c.id);
    if (!subject || c.claimed.verdict === 'not-assessed') return [];
    return [[c.id, trajectoryOf(context, subject, c, c.claimed.outcomes.length > 0 ? 'claimed' : 'tested')]];
  });
  return Object.fromEntries(found);
}
