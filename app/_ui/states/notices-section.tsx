import type { FormAction } from '../form/answer';
import { Fold } from '../frame/fold';
import { Section } from '../frame/section';
import { momentSaid } from '../words/moment';
import { EndNoticeForm, NoticeForm } from './notice-form';
import type { SiteOfStates } from './state-view';
import style from './states.module.css';

/** A notice of work by others. Instants are UTC, ISO. */
export interface NoticeView {
  id: string;
  kind: string;
  what: string;
  todo: string;
  from: string;
  until: string;
  by: string;
  isInForce: boolean;
  reaches: { system: string; equipment: string[] }[];
}

interface Props {
  site: SiteOfStates;
  notices: readonly NoticeView[];
  systems: readonly { key: string; name: string }[];
  entry: string;
  /** For those who may; null for others. */
  actions: { add: FormAction<unknown>; end: FormAction<unknown> } | null;
}

/** Work by others that reaches the systems, and its end. */
export function NoticesSection({ site, notices, systems, entry, actions }: Props) {
  if (notices.length === 0 && !actions) return null;
  return (
    <Section
      id="notices"
      title="Others at work"
      note="Painters, pest control, fire panels: fumes reach the blowers. Each notice ends by its time."
    >
      {notices.map((notice) => (
        <article key={notice.id} className={style.state}>
          <h3>
            {notice.kind}: {notice.what}
          </h3>
          <p>
            {notice.isInForce ? 'In force' : 'From'} {notice.isInForce ? 'until' : momentSaid(notice.from, site.zone)}
            {notice.isInForce ? '' : ' until'} {momentSaid(notice.until, site.zone)}, said {notice.by}.
          </p>
          <p>{notice.todo}</p>
          <p className={style.small}>Reaches {reachesSaid(notice.reaches)}.</p>
          {actions ? (
            <Fold title="It is over already">
              <EndNoticeForm site={site.key} notice={notice.id} end={actions.end} />
            </Fold>
          ) : null}
        </article>
      ))}
      {actions ? (
        <Fold title="Give notice of work by others">
          <NoticeForm site={site.key} entry={entry} systems={systems} add={actions.add} />
        </Fold>
      ) : null}
    </Section>
  );
}

function reachesSaid(reaches: NoticeView['reaches']): string {
  const said = reaches.map(({ system, equipment }) =>
    equipment.length > 0 ? `${system} through ${equipment.join(', ')}` : system,
  );
  return said.length > 0 ? said.join('; ') : 'no system';
}
