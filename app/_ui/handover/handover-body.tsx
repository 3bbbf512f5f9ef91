import Link from '../frame/link';
import { countAbnormal } from '#core/handover/shown';
import type { FormAction } from '../form/answer';
import { Fold } from '../frame/fold';
import { Page } from '../frame/page';
import { Section } from '../frame/section';
import { siteAddress } from '../frame/site-address';
import { momentSaid } from '../words/moment';
import { EndedWatches } from './ended-watches';
import { EndWatchForm, GiveForm, TakeHereForm, WatchForm } from './handover-forms';
import type { HandoverPageView } from './handover-view';
import { PastHandovers } from './past-handovers';
import { ShownSections } from './shown-sections';
import style from './handover.module.css';

export interface HandoverActions {
  give: FormAction<unknown>;
  takeHere: FormAction<unknown>;
  watch: FormAction<unknown>;
  endWatch: FormAction<unknown>;
  takeBack: FormAction<unknown>;
}

/** What stands at a site, for whoever hands it over and whoever takes it. */
export function HandoverBody({ page, actions }: { page: HandoverPageView; actions: HandoverActions }) {
  const { site, at, shown, past } = page;
  const wrong = countAbnormal(shown);
  return (
    <Page
      title="Handover"
      over={[
        { href: '/', name: 'Systems' },
        { href: siteAddress(site.key), name: site.name },
      ]}
      lead={
        <p>
          {site.name} as it stands {momentSaid(at, site.zone)}, by the clock of {site.zone}.{' '}
          {wrong === 0
            ? 'Nothing is out of order.'
            : `${wrong} ${wrong === 1 ? 'line is' : 'lines are'} out of order, marked ▲.`}
        </p>
      }
    >
      <ShownSections shown={shown} zone={site.zone} />
      {page.mayGive ? <Doings page={page} actions={actions} /> : null}
      <PastHandovers site={site} past={past} />
    </Page>
  );
}

function Doings({ page, actions }: { page: HandoverPageView; actions: HandoverActions }) {
  const { site, open, animals } = page;
  return (
    <div className={style.form}>
      <Section
        id="sign"
        title="Read back and sign"
        note="One reads it out, the other reads it back; both sign. What was shown is kept with its digest, and nobody changes it."
      >
        {open ? (
          <>
            <p>
              Handed over by {open.by} {momentSaid(open.at, site.zone)}, and not taken yet:{' '}
              <Link href={siteAddress(site.key, 'handover', open.id)}>read what was handed over</Link>
              {open.isOwn
                ? '. Whoever takes it signs there on a session of their own, or here.'
                : ', and take it there.'}
            </p>
            {open.isOwn ? (
              <Fold title="Taken on this device">
                <TakeHereForm site={site.key} handover={open.id} take={actions.takeHere} />
              </Fold>
            ) : null}
          </>
        ) : null}
        <Fold title={open ? 'Hand over anew, as it stands now' : 'Hand over as it stands now'}>
          <GiveForm site={site.key} entry={page.entry} print={page.print} give={actions.give} />
        </Fold>
      </Section>
      <Section id="watching" title="Animals under watch, changed">
        {animals.map(({ id, what }) => (
          <Fold key={id} title={`End the watch of ${what}`}>
            <EndWatchForm site={site.key} watch={id} end={actions.endWatch} />
          </Fold>
        ))}
        <Fold title="Put animals under watch">
          <WatchForm site={site.key} entry={page.entry} systems={page.systems} watch={actions.watch} />
        </Fold>
        <EndedWatches site={site} ended={page.ended} takeBack={actions.takeBack} />
      </Section>
    </div>
  );
}
