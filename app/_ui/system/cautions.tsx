import type { System } from '#core/facility/system';
import type { SystemReview } from '#core/review/result';
import { cautionsOf } from './cautions-for';

/** Where the work that a review asks for can hurt somebody. */
export function Cautions({ system, review }: { system: System; review: SystemReview }) {
  return (
    <ul>
      {cautionsOf(system, review).map((says) => (
        <li key={says}>{says}</li>
      ))}
    </ul>
  );
}
