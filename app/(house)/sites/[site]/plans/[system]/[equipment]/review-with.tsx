import { ask } from '#server/gate/ask';
import { refusalWords } from '#server/gate/refusal-words';
import { comparePiece, comparePlan, comparePlanShape } from '#server/plans/compare-plan';
import { ReviewDifferenceView } from '#ui/review/review-difference';
import type { PlanAddress } from './ask-plan';

const askWhole = ask(comparePlanShape, (who, input) => comparePlan(who, input));
const askPiece = ask(comparePlanShape, (who, input) => comparePiece(who, input));

/** What of it: the faults of the piece of equipment itself, which are there first, or everything. */
const PARTS = {
  piece: { title: 'What becomes of its own faults with it', asked: askPiece },
  whole: { title: 'What the review would say with it', asked: askWhole },
};

/** What the review would say with a version of a plan in force. */
export async function ReviewWith(props: { address: PlanAddress; version: number; part: keyof typeof PARTS }) {
  const { address, version, part } = props;
  const { title, asked } = PARTS[part];
  const { site, system, equipment } = address;
  const answer = await asked({
    site: decodeURIComponent(site),
    system: decodeURIComponent(system),
    equipment: decodeURIComponent(equipment),
    version,
  });
  if (!answer.ok) return <p>What the review would say is not known. {refusalWords(answer.reason)}</p>;
  return (
    <section aria-label={title}>
      <h3>{title}</h3>
      <ReviewDifferenceView difference={answer.value} />
    </section>
  );
}
