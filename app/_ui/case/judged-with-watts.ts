import type { Facility } from '#core/facility/facility';
import { contextOf } from '#core/review/context';
import { judge } from '#core/review/judge';
import type { FaultCase } from '#core/review/result';
import { subjectsOf } from '#core/review/subjects';

/**
 * A fault case of a heater, judged again with another rated power.
 *
 * @param facility the site with the one system in question
 * @param caseId fault, thing and state with colons between them
 * @param watts rated power to try, W
 * @param on ISO date the tests are judged on
 * @throws Error when the system has no such case
 */
export function judgedWithWatts(facility: Facility, caseId: string, watts: number, on: string): FaultCase {
  const [, key] = caseId.split(':');
  const [system] = facility.systems.map((one) => ({
    ...one,
    equipment: one.equipment.map((e) =>
      e.key === key ? { ...e, ratedW: { value: watts, origin: 'entered' as const } } : e,
    ),
  }));
  const subject =
    system &&
    subjectsOf(facility, system).find(({ fault, thing, state }) => `${fault.id}:${thing.key}:${state}` === caseId);
  if (!system || !subject) throw new Error(`There is no fault case ${caseId} in this system.`);
  return judge(contextOf({ ...facility, systems: [system] }, system, on), subject);
}
