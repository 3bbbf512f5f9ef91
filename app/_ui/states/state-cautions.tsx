import { cautionsFor, cautionText } from '#core/cautions/cautions-for';
import type { EquipmentType } from '#core/facility/system';
import type { Begun } from '#core/states/state-end';
import style from './states.module.css';

/** What can hurt somebody in a state. @param equipment types of the equipment there is */
export function StateCautions({ state, equipment }: { state: Begun; equipment: readonly string[] }) {
  const said = cautionsFor({ doing: 'state', states: [state], equipment: equipment as readonly EquipmentType[] });
  if (said.length === 0) return null;
  return (
    <>
      <p className={style.small}>
        Before any work. Local codes, the makers’ instructions and the attending vet come first; where each of these is
        from stands in the almanac.
      </p>
      <ul className={style.cautions}>
        {said.map((caution) => (
          <li key={caution.key}>{cautionText(caution)}</li>
        ))}
      </ul>
    </>
  );
}
