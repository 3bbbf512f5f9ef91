import Link from '../frame/link';
import { alikeStretches } from '#core/review/people/alike';
import { Fold } from '../frame/fold';
import { Page } from '../frame/page';
import { Section } from '../frame/section';
import { siteAddress } from '../frame/site-address';
import type { CoverView } from './cover-view';
import { SystemTide } from './system-tide';
import { TimesMadeOf } from './times-made-of';
import { WeakTable } from './weak-table';
import { WeeksAhead } from './weeks-ahead';
import { WhatIfAnswer } from './what-if-said';
import { WhatIfForm } from './what-if-form';

/** Weakest stretches and charts that are shown at once; the others are folded. */
const WEAKEST = 12;
const CHARTS = 4;

/** What the rota leaves to spare: the weakest hours, every system through the week, coming weeks, and what if. */
export function CoverBody({ page }: { page: CoverView }) {
  const { site, facility, column, cover, missing, weeks } = page;
  const address = siteAddress(site.key, 'rota', 'cover');
  const weakest = alikeStretches(cover.weakest[column]);
  return (
    <Page
      title="Cover"
      over={[
        { href: '/', name: 'Systems' },
        { href: siteAddress(site.key), name: site.name },
        { href: siteAddress(site.key, 'rota'), name: 'Rota' },
      ]}
      lead={<Lead column={column} address={address} />}
    >
      {missing.length > 0 ? <p>Not here, since their review is under way or broke: {missing.join(', ')}.</p> : null}
      <Section id="weakest" wide title="The weakest hours" note="Of all systems, the least to spare first.">
        {weakest.length === 0 ? (
          <p>{nothingSaid(page)}</p>
        ) : (
          <WeakTable
            site={site.key}
            facility={facility}
            rows={weakest.slice(0, WEAKEST)}
            caption="In each, one fault case leaves least. Those lost at every hour stand beneath the charts."
            withSystem
          />
        )}
      </Section>
      <WhatIf page={page} address={address} />
      <Section id="week" wide title="Through the week" note="Below nothing to spare the curve is hatched.">
        <Tides page={page} />
      </Section>
      <Section id="weeks" wide title="Coming weeks">
        {cover.systems.length === 0 && missing.length > 0 ? (
          <p>{NOT_YET}</p>
        ) : (
          <WeeksAhead weeks={weeks} facility={facility} />
        )}
      </Section>
      <Section id="times" title="What the times are made of">
        <TimesMadeOf facility={facility} site={site.key} />
      </Section>
    </Page>
  );
}

/** Where no review is there, silence would read as safety. */
const NOT_YET = 'Nothing can be said before a review is there: this page fills as they come.';

/** Why no weak hour is told of: no review says anything yet, or nothing is harmed in those that do. */
function nothingSaid({ cover, missing }: CoverView): string {
  if (missing.length === 0) return 'No fault case of any system harms anything.';
  return cover.systems.length === 0 ? NOT_YET : 'No fault case of the systems that are here harms anything.';
}

function Lead({ column, address }: { column: CoverView['column']; address: string }) {
  return (
    <p>
      Time to spare at each hour of the usual week: the last chance of a fault that begins then, less the time until
      somebody has put it right.{' '}
      {column === 'claimed' ? (
        <>
          As claimed: safeguards and alarms count as they are described.{' '}
          <Link href={`${address}?column=tested`}>As tested</Link> they count only if a test proves them.
        </>
      ) : (
        <>
          As tested: safeguards and alarms count only if a test proves them. <Link href={address}>As claimed</Link> they
          count as they are described.
        </>
      )}
    </p>
  );
}

function WhatIf({ page, address }: { page: CoverView; address: string }) {
  const { site, facility, column, cover, asked, wrong, mayDescribe } = page;
  const said = cover.whatIf?.[column];
  return (
    <Section
      id="what-if"
      wide
      title="What if"
      note="Asked of the people alone: the water is as the reviews left it. Nothing is kept."
    >
      <WhatIfForm asked={asked} wrong={wrong} column={column} facility={facility} address={address} />
      {said ? <WhatIfAnswer site={site.key} facility={facility} said={said} /> : null}
      {said && mayDescribe ? (
        <p>
          To make it so, <Link href={`${siteAddress(site.key, 'describe')}#of-the-site`}>change shifts and people</Link>{' '}
          in the description.
        </p>
      ) : null}
    </Section>
  );
}

function Tides({ page: { site, facility, column, cover, missing } }: { page: CoverView }) {
  if (cover.systems.length === 0 && missing.length > 0) return <p>{NOT_YET}</p>;
  const tides = cover.systems.map((of) => (
    <SystemTide key={of.system} site={site.key} facility={facility} of={of} column={column} />
  ));
  return (
    <>
      {tides.slice(0, CHARTS)}
      {tides.length > CHARTS ? (
        <Fold title={`${tides.length - CHARTS} more systems`}>{tides.slice(CHARTS)}</Fold>
      ) : null}
    </>
  );
}
