import type { System } from '#core/facility/system';
import type { Finding, SystemReview } from '#core/review/result';
import cautions from './cautions.json';

interface Caution {
  says: string;
  equipment?: string[];
  remedies?: string[];
  kinds?: string[];
  floor?: boolean;
}

const CAUTIONS: readonly Caution[] = cautions;

/** What to mind before anybody works on a system, as its review asks for: where it can hurt somebody. */
export function cautionsOf(system: System, review: SystemReview): string[] {
  const asked = new Set(review.findings.map(remedyOf));
  const floods = review.cases.some((c) => c.claimed.outcomes.some((o) => o.harm.class === 'floor'));
  return CAUTIONS.filter(
    ({ equipment, remedies, kinds, floor }) =>
      system.equipment.some((e) => equipment?.includes(e.type)) ||
      remedies?.some((id) => asked.has(id)) ||
      kinds?.includes(system.kind) ||
      (floor === true && floods),
  ).map(({ says }) => says);
}

/** What to mind before the work that one finding asks for. */
export function cautionsFor(finding: Finding): string[] {
  return CAUTIONS.filter(({ remedies }) => remedies?.includes(remedyOf(finding))).map(({ says }) => says);
}

function remedyOf({ id }: Finding): string {
  return id.replace(/^[a-z]+:/, '');
}
