import type { Begun } from '#core/states/state-end';
import cautions from './cautions.json';
import style from './states.module.css';

interface Caution {
  says: string;
  states: string[];
  equipment?: string[];
}

const CAUTIONS: readonly Caution[] = cautions;

/** What can hurt somebody in a state. @param equipment types of the equipment there is */
export function StateCautions({ state, equipment }: { state: Begun; equipment: readonly string[] }) {
  const said = CAUTIONS.filter(
    ({ states, equipment: only }) => states.includes(state) && (only?.some((type) => equipment.includes(type)) ?? true),
  );
  if (said.length === 0) return null;
  return (
    <>
      <p className={style.small}>
        Before any work. Common practice, no source: local codes, the makers’ instructions and the attending vet come
        first.
      </p>
      <ul className={style.cautions}>
        {said.map(({ says }) => (
          <li key={says}>{says}</li>
        ))}
      </ul>
    </>
  );
}
