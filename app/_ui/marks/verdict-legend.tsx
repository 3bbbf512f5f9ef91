import { VERDICT_MEANINGS } from '../words/verdict-meanings';
import style from './legend.module.css';
import { VerdictMark } from './verdict';

/** The verdict words with their shapes and what they mean, gravest first. */
export function VerdictLegend() {
  return (
    <dl className={style.legend}>
      {VERDICT_MEANINGS.map(({ verdict, meaning }) => (
        <div key={verdict}>
          <dt>
            <VerdictMark verdict={verdict} />
          </dt>
          <dd>{meaning}</dd>
        </div>
      ))}
      <div>
        <dt className={style.mark}>≈ unsure</dt>
        <dd>The plausible range of what was entered or filled in, taken on the bad side, would change the verdict.</dd>
      </div>
    </dl>
  );
}
