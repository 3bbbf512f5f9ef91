import { alsoCalled, FAULTS } from '#core/faults/catalogue';
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
          <AlsoCalled fault={fault.id} />
        </Section>
      ) : null}
    </>
  );
}

/** Other failure modes that make the same of the water: this case stands for them. */
function AlsoCalled({ fault }: { fault: string }) {
  const others = alsoCalled({ id: fault });
  if (others.length === 0) return null;
  return (
    <>
      <p>The water takes the same course, and this case stands for it as well, with:</p>
      <ul>
        {others.map(({ id, title, effect, source }) => (
          <li key={id}>
            {title}. {effect} Source: {source}.
          </li>
        ))}
      </ul>
    </>
  );
}
