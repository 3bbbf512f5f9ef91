import type { EquipmentType } from '#core/facility/system';
import cautions from '../system/cautions.json';
import type { LineView } from './round-view';
import style from './rounds.module.css';

interface Caution {
  says: string;
  equipment?: string[];
  remedies?: string[];
  floor?: boolean;
}

const CAUTIONS: readonly Caution[] = cautions;

/** Where what is looked at here can hurt somebody. */
export function PlaceCautions({ lines }: { lines: readonly LineView[] }) {
  const types = new Set(lines.flatMap(({ check }): EquipmentType[] => (check.about.type ? [check.about.type] : [])));
  const hasTest = lines.some(({ check }) => check.kind === 'test');
  const hasFloor = lines.some(({ check }) => check.about.noun === 'system');
  const said = CAUTIONS.filter(
    ({ equipment, remedies, floor }) =>
      [...types].some((type) => equipment?.includes(type)) ||
      (hasTest && remedies?.includes('test-safeguards')) ||
      (hasFloor && floor),
  );
  if (said.length === 0) return null;
  return (
    <div className={style.cautions}>
      <p>Look and listen; do not reach in. Local rules and licensed people come first.</p>
      <ul>
        {said.map(({ says }) => (
          <li key={says}>{says}</li>
        ))}
      </ul>
    </div>
  );
}
