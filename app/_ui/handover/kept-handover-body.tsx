import type { FormAction } from '../form/answer';
import { Page } from '../frame/page';
import { Section } from '../frame/section';
import { siteAddress } from '../frame/site-address';
import { momentSaid } from '../words/moment';
import { TakeForm } from './handover-forms';
import type { KeptHandoverView } from './handover-view';
import { ShownSections } from './shown-sections';
import style from './handover.module.css';

interface Props {
  page: KeptHandoverView;
  take: FormAction<unknown>;
}

/** One handover as it was given, with its signatures. */
export function KeptHandoverBody({ page: { site, line, shown, isWhole, mayTake }, take }: Props) {
  return (
    <Page
      title="Handed over"
      over={[
        { href: '/', name: 'Systems' },
        { href: siteAddress(site.key), name: site.name },
        { href: siteAddress(site.key, 'handover'), name: 'Handover' },
      ]}
      lead={
        <>
          <p>
            {site.name} as {line.by} handed it over {momentSaid(line.at, site.zone)}.{' '}
            {line.taken
              ? `Read back and taken ${momentSaid(line.taken.at, site.zone)} by ${line.taken.by}${line.taken.how === 'password' ? ', on the same device' : ''}.`
              : 'Nobody has taken it yet.'}
          </p>
          {line.note ? <p>“{line.note}”</p> : null}
          {line.taken?.note ? <p>“{line.taken.note}”</p> : null}
        </>
      }
    >
      <ShownSections shown={shown} zone={site.zone} />
      <Section id="signed" title="Signed">
        <p className={style.digest}>SHA-256 of what is shown here: {line.digest}</p>
        {isWhole ? null : (
          <p>
            <span aria-hidden="true" className={style.mark}>
              ▲
            </span>{' '}
            <strong>What is kept is not what was signed.</strong> Its digest differs.
          </p>
        )}
        {mayTake ? (
          <div className={style.form}>
            <TakeForm site={site.key} handover={line.id} take={take} />
          </div>
        ) : null}
      </Section>
    </Page>
  );
}
