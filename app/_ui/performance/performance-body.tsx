import { Page } from '../frame/page';
import { Section } from '../frame/section';
import { siteAddress } from '../frame/site-address';
import { instantSaid } from '../words/instant';
import { AnswerTimes } from './answer-times';
import { LoadTable } from './load-table';
import { OftenLists } from './often-lists';
import { type PerformanceView, shareSaid } from './performance-view';
import { AnswererTable } from './answerer-table';
import { REFERENCES } from '#core/alarms/performance/references';

/** How the alarms of a site did: figures with the reference lines of the standard beside them, and no grades. */
export function PerformanceBody({ page }: { page: PerformanceView }) {
  const { site, days, figures, fromMs, toMs } = page;
  const at = siteAddress(site.key);
  const said = (ms: number) => instantSaid(new Date(ms).toISOString(), site.zone);
  return (
    <Page
      title="How the alarms did"
      over={[
        { href: '/', name: 'Systems' },
        { href: at, name: site.name },
        { href: `${at}/alarms`, name: 'Alarms' },
      ]}
      lead={
        <p>
          {figures.load.count === 0 ? 'No alarm' : `${figures.load.count} alarms`} in {days} days, {said(fromMs)} to{' '}
          {said(toMs)} ({site.zone}).
        </p>
      }
    >
      <Section
        id="load"
        title="How many"
        note={
          <p>
            The lines are those of ISA-18.2 and IEC 62682 for what one person answers, as published summaries tell them.
            They are there to look along.
          </p>
        }
        wide
      >
        <LoadTable load={figures.load} said={said} />
      </Section>
      <Section id="answerers" title="Who had to answer them" wide>
        <AnswererTable answerers={figures.answerers} />
      </Section>
      <Section id="times" title="How soon they were acknowledged" wide>
        <AnswerTimes answering={figures.answering} />
      </Section>
      <Section
        id="often"
        title="Which came too often"
        note={<p>None of these should stay: each wants another limit, another delay, or a repair.</p>}
        wide
      >
        <OftenLists figures={figures} />
      </Section>
      <Priorities figures={figures} />
    </Page>
  );
}

function Priorities({ figures: { spread, topShare } }: Pick<PerformanceView, 'figures'>) {
  return (
    <Section id="priority" title="Priorities" note={<p>About 80 % low, 15 % medium, 5 % high.</p>}>
      {spread.length === 0 ? (
        <p>No alarm.</p>
      ) : (
        <ul>
          {spread.map(({ priority, count, share }) => (
            <li key={priority ?? ''}>
              {priority ?? 'none chosen or proposed'}: {count}, {shareSaid(share)}
            </li>
          ))}
        </ul>
      )}
      <p>
        The ten most frequent alarms make up {shareSaid(topShare)} of all ({shareSaid(REFERENCES.topTenShare)} at most).
      </p>
    </Section>
  );
}
