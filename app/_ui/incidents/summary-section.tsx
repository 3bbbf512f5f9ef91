import { PARTS, type Part } from '#core/incidents/incident';
import { PART_WORDS } from '#core/incidents/words';
import type { FormAction } from '../form/answer';
import { Fold } from '../frame/fold';
import { Section } from '../frame/section';
import type { HeadView } from './incident-view';
import style from './incidents.module.css';
import type { FindingsView } from './investigation-view';
import { SummaryForm } from './summary-form';

/** Parts that are told in words of one's own. */
const TOLD: readonly Part[] = PARTS.filter((part) => part !== 'case');

interface SummaryProps {
  head: HeadView;
  ids: Readonly<Record<string, string>>;
  investigate: FormAction<unknown>;
  page: Pick<FindingsView, 'summary'>;
}

/** What happened, what went well, where we were lucky, and where else it could happen. */
export function SummarySection({ head, ids, investigate, page }: SummaryProps) {
  return (
    <Section id="summary" title="Summary" note="Opinion stands here, and the facts in the timeline.">
      {TOLD.map((part) => {
        const text = page.summary.find(({ body }) => body.part === part)?.body.text;
        return (
          <div key={part}>
            <h3>{PART_WORDS[part]}</h3>
            <p className={style.said}>{text ?? 'Not written yet.'}</p>
            {head.mayInvestigate ? (
              <Fold title={text === undefined ? 'Write it' : 'Write it anew'}>
                <SummaryForm head={head} id={ids[part]} part={part} text={text} investigate={investigate} />
              </Fold>
            ) : null}
          </div>
        );
      })}
    </Section>
  );
}
