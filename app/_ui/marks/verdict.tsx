import type { HarmClass, Verdict } from '#core/review/result';
import { VERDICT_WORDS } from '#core/review/words';
import { VerdictShape } from './verdict-shape';
import style from './verdict.module.css';

const BEFALLS: Record<HarmClass, string> = { animals: '', floor: 'floor', equipment: 'pump' };

/**
 * A verdict: shape and word.
 * @param of whom the harm befalls; said when it is not the animals
 * @param unsure the plausible range of the inputs would change it
 */
export function VerdictMark({ verdict, of, unsure = false }: { verdict: Verdict; of?: HarmClass; unsure?: boolean }) {
  return (
    <span className={style.verdict} data-verdict={verdict}>
      <VerdictShape verdict={verdict} />
      <span>
        {VERDICT_WORDS[verdict]}
        {of && BEFALLS[of] ? <span className={style.aside}>, {BEFALLS[of]}</span> : null}
        {unsure ? <span className={style.unsure}>unsure</span> : null}
      </span>
    </span>
  );
}
