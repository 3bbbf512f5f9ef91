import { cautionsFor as cautionsAt, cautionText } from '#core/cautions/cautions-for';
import type { System } from '#core/facility/system';
import type { Finding, SystemReview } from '#core/review/result';

/** What to mind before anybody works on a system, as its review asks for: where it can hurt somebody. */
export function cautionsOf(system: System, review: SystemReview): string[] {
  const said = cautionsAt({
    doing: 'review',
    equipment: system.equipment.map(({ type }) => type),
    remedies: review.findings.map(remedyOf),
    kinds: [system.kind],
    floor: review.cases.some((c) => c.claimed.outcomes.some((o) => o.harm.class === 'floor')),
  });
  return said.map(cautionText);
}

/** What to mind before the work that one finding asks for. */
export function cautionsFor(finding: Finding): string[] {
  return cautionsAt({ doing: 'finding', remedies: [remedyOf(finding)] }).map(cautionText);
}

function remedyOf({ id }: Finding): string {
  return id.replace(/^[a-z]+:/, '');
}
