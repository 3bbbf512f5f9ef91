import { FAULTS } from '#core/faults/catalogue';
import { isRemedy, remedyText } from '#core/review/remedies';
import type { FaultCase } from '#core/review/result';
import { Section } from '../frame/section';

/** What would answer a fault case, what its failure mode does, and where it is known from. */
export function FailureMode({ faultCase }: { faultCase: FaultCase }) {
  const fault = FAULTS.find((f) => f.id === faultCase.fault);
  return (
    <>
      <Section
        id="remedies"
        title="What would answer it"
        note="Most direct first. Whether each is in place already is seen under the system’s findings."
      >
        <ol>
          {faultCase.remedies.filter(isRemedy).map((id) => (
            <li key={id}>{remedyText(id)}</li>
          ))}
        </ol>
      </Section>
      {fault ? (
        <Section id="source" title="The failure mode">
          <p>{fault.effect}</p>
          <p>Source: {fault.source}.</p>
        </Section>
      ) : null}
    </>
  );
}
