import { cautionsFor, cautionText } from '#core/cautions/cautions-for';
import type { System } from '#core/facility/system';
import { alsoCalled } from '#core/faults/catalogue';
import type { FaultCase } from '#core/review/result';
import { Section } from '../frame/section';

/** What can hurt whoever puts a fault right. */
export function CaseCautions({ system, faultCase }: { system: System; faultCase: FaultCase }) {
  const { fault, thing, claimed, tested } = faultCase;
  const said = cautionsFor({
    doing: 'case',
    faults: [fault, ...alsoCalled({ id: fault }).map(({ id }) => id)],
    equipment: system.equipment.filter(({ key }) => thing.kind === 'equipment' && key === thing.key).map((e) => e.type),
    floor: [...claimed.outcomes, ...tested.outcomes].some(({ harm }) => harm.class === 'floor'),
  });
  if (said.length === 0) return null;
  return (
    <Section
      id="cautions"
      title="Before anybody puts it right"
      note="Local codes, licensed people and the makers’ instructions come first."
    >
      <ul>
        {said.map((caution) => (
          <li key={caution.key}>{cautionText(caution)}</li>
        ))}
      </ul>
    </Section>
  );
}
