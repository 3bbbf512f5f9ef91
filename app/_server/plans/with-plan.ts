import 'server-only';
import { checkReferences } from '#core/facility/check-references';
import type { Facility } from '#core/facility/facility';
import { formatPath } from '#core/facility/path';
import type { Plan } from '#core/plans/plan';
import type { Fault } from '../gate/refusal';

/** A facility with another plan for one piece of its equipment. */
export function withPlan(facility: Facility, system: string, equipment: string, plan: Plan): Facility {
  return {
    ...facility,
    systems: facility.systems.map((one) =>
      one.key === system
        ? { ...one, equipment: one.equipment.map((piece) => (piece.key === equipment ? { ...piece, plan } : piece)) }
        : one,
    ),
  };
}

/**
 * What does not fit in a plan: it names a tank, a sensor or a safeguard that is not there or is of another kind, or
 * contradicts itself.
 *
 * @returns   faults by the fields of the plan; empty when all fits
 */
export function misfits(facility: Facility, system: string, equipment: string, plan: Plan): Fault[] {
  const changed = withPlan(facility, system, equipment, plan);
  const at = changed.systems.findIndex(({ key }) => key === system);
  const of = changed.systems[at]?.equipment.findIndex(({ key }) => key === equipment);
  return checkReferences(changed)
    .filter(({ path }) => path[1] === at && path[2] === 'equipment' && path[3] === of && path[4] === 'plan')
    .map(({ path, message }) => ({ path: formatPath(path.slice(5)), message }));
}
