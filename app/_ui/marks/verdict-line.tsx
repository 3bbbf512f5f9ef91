import type { HarmClass, Verdict } from '#core/review/result';
import { VerdictMark } from './verdict';
import style from './verdict-line.module.css';

interface Said {
  verdict: Verdict;
  befalls?: HarmClass;
}

/** The verdicts of both columns in one line. */
export function VerdictLine({ claimed, tested, unsure }: { claimed: Said; tested: Said; unsure: boolean }) {
  return (
    <dl className={style.line}>
      <div>
        <dt>As claimed</dt>
        <dd>
          <VerdictMark verdict={claimed.verdict} of={claimed.befalls} unsure={unsure} />
        </dd>
      </div>
      <div>
        <dt>As tested</dt>
        <dd>
          <VerdictMark verdict={tested.verdict} of={tested.befalls} />
        </dd>
      </div>
    </dl>
  );
}
