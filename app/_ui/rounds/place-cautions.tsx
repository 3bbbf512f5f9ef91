import { cautionsFor, cautionText } from '#core/cautions/cautions-for';
import type { EquipmentType } from '#core/facility/system';
import type { LineView } from './round-view';
import style from './rounds.module.css';

/** Where what is looked at here can hurt somebody. */
export function PlaceCautions({ lines }: { lines: readonly LineView[] }) {
  const types = new Set(lines.flatMap(({ check }): EquipmentType[] => (check.about.type ? [check.about.type] : [])));
  const said = cautionsFor({
    doing: 'round',
    equipment: [...types],
    remedies: lines.some(({ check }) => check.kind === 'test') ? ['test-safeguards'] : [],
    floor: lines.some(({ check }) => check.about.noun === 'system'),
  });
  if (said.length === 0) return null;
  return (
    <div className={style.cautions}>
      <p>Look and listen; do not reach in. Local rules and licensed people come first.</p>
      <ul>
        {said.map((caution) => (
          <li key={caution.key}>{cautionText(caution)}</li>
        ))}
      </ul>
    </div>
  );
}
