import type { Custom } from '#core/units/shown';
import { Section } from '../frame/section';
import { ReviewDifferenceView } from '../review/review-difference';
import { OpenFigures } from '../system/open-figures';
import { PlanTable } from '../system/plan-table';
import { namesOf } from '../words/names';
import type { StartPreview } from './answers';

/** What the answers describe and what the review says of it. */
export function StartPreviewView({ preview, units }: { preview: StartPreview; units: Custom }) {
  const { facility, system, review, openInputs } = preview;
  return (
    <>
      <Section id="review" wide title="What the review says">
        <ReviewDifferenceView difference={review} />
      </Section>
      <Section
        id="plans"
        wide
        title="The plans that are written for it"
        note="What you answered and no more: a protection that nobody was asked about is not claimed."
      >
        <PlanTable system={system} speech={{ units, names: namesOf(facility, system) }} />
      </Section>
      {openInputs.length > 0 ? (
        <Section
          id="unsure"
          wide
          title="What would settle most"
          note="Figures nobody gave, whose range would change a verdict."
        >
          <OpenFigures inputs={openInputs} askNext={null} units={units} describeAt={null} />
        </Section>
      ) : null}
    </>
  );
}
