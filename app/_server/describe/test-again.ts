import 'server-only';
import type { Facility } from '#core/facility/facility';
import type { Plan } from '#core/plans/plan';
import { safeguardsOf } from '#core/plans/credit';
import type { EditRequest } from '#shape/describe/edit';

/**
 * Safeguards whose tests were made with the thing that is replaced: the new one has not been through them.
 *
 * @returns   their names, in the order of the description
 */
export function testAgain(facility: Facility, { noun, system: at, key }: Pick<EditRequest, 'noun' | 'system' | 'key'>) {
  const system = facility.systems.find((one) => one.key === at);
  if (!system || key === undefined) return [];
  const keys = new Set(
    noun === 'equipment'
      ? system.equipment.filter((one) => one.key === key).flatMap(({ plan }) => provingPlan(plan))
      : system.alarms.filter(({ on }) => 'sensor' in on && on.sensor === key).map(({ safeguard }) => safeguard),
  );
  return safeguardsOf(facility, system)
    .filter((one) => keys.has(one.key))
    .map(({ name }) => name);
}

function provingPlan({ cutOuts, interlocks, regulation }: Plan): (string | undefined)[] {
  const limit = regulation.kind === 'level' ? regulation.runLimitSafeguard : undefined;
  return [...cutOuts, ...interlocks].map(({ safeguard }): string | undefined => safeguard).concat(limit ?? []);
}
