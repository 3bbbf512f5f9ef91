import type { System } from '#core/facility/system';
import type { SystemReview } from '#core/review/result';
import cautions from './cautions.json';

interface Caution {
  says: string;
  equipment?: string[];
  remedies?: string[];
  kinds?: string[];
  floor?: boolean;
}

const CAUTIONS: readonly Caution[] = cautions;

/** Where the work that a review asks for can hurt somebody. */
export function Cautions({ system, review }: { system: System; review: SystemReview }) {
  return (
    <ul>
      {CAUTIONS.filter((caution) => applies(caution, system, review)).map(({ says }) => (
        <li key={says}>{says}</li>
      ))}
    </ul>
  );
}

function applies({ equipment, remedies, kinds, floor }: Caution, system: System, review: SystemReview): boolean {
  const asked = new Set(review.findings.map(({ id }) => id.replace(/^[a-z]+:/, '')));
  return (
    system.equipment.some((e) => equipment?.includes(e.type)) ||
    (remedies?.some((id) => asked.has(id)) ?? false) ||
    (kinds?.includes(system.kind) ?? false) ||
    (floor === true && review.cases.some((c) => c.claimed.outcomes.some((o) => o.harm.class === 'floor')))
  );
}
