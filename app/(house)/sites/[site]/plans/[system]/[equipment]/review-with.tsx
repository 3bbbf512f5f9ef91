import { ask } from '#server/gate/ask';
import { refusalWords } from '#server/gate/refusal-words';
import { comparePlan, comparePlanShape } from '#server/plans/compare-plan';
import { ReviewDifferenceView } from '#ui/review/review-difference';
import type { PlanAddress } from './ask-plan';

const askComparison = ask(comparePlanShape, (who, input) => comparePlan(who, input));

/** What the review would say with a version of a plan in force. */
export async function ReviewWith({ address, version }: { address: PlanAddress; version: number }) {
  const { site, system, equipment } = address;
  const answer = await askComparison({
    site: decodeURIComponent(site),
    system: decodeURIComponent(system),
    equipment: decodeURIComponent(equipment),
    version,
  });
  if (!answer.ok) return <p>What the review would say is not known. {refusalWords(answer.reason)}</p>;
  return (
    <section aria-label="What the review would say with it">
      <h3>What the review would say with it</h3>
      <ReviewDifferenceView difference={answer.value} />
    </section>
  );
}
