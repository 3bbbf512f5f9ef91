import type { Begun } from '#core/states/state-end';
import type { FormAction } from '../form/answer';
import { Section } from '../frame/section';
import { momentSaid } from '../words/moment';
import { AnswerForm } from './answer-form';
import { type SiteOfStates, stateName } from './state-view';
import style from './states.module.css';

/** A state that looks as if it had begun. Instants are UTC, ISO. */
export interface AskedView {
  asked: string;
  system: { key: string; name: string };
  state: Begun;
  why: 'watts' | 'clock';
  since: string;
  equipment: string[];
  entry: string;
}

interface Props {
  site: SiteOfStates;
  asked: readonly AskedView[];
  /** For those who may; null for others. */
  answer: FormAction<unknown> | null;
}

/** What looks as if it had begun: a person says whether it has. */
export function AskedBegunSection({ site, asked, answer }: Props) {
  if (asked.length === 0) return null;
  return (
    <Section id="asked-begun" title="Is it so?" note="Nobody said so yet: it counts only once somebody does.">
      {asked.map((one) => (
        <article key={one.asked} className={style.state}>
          <h3>
            {stateName(one.state)}, {one.system.name}
          </h3>
          <p>
            {one.why === 'clock' ? 'Due by the clock' : 'Looks as if it had begun'} {momentSaid(one.since, site.zone)}
            {one.equipment.length > 0
              ? `: ${one.equipment.join(', ')} ${one.equipment.length > 1 ? 'draw' : 'draws'} nothing since`
              : ''}
            .
          </p>
          {answer ? <AnswerForm site={site.key} one={one} answer={answer} /> : null}
        </article>
      ))}
    </Section>
  );
}
