import Link from '../frame/link';
import { MissedTests, type MissedView } from '../calls/missed-tests';
import type { FormAction } from '../form/answer';
import { Fold } from '../frame/fold';
import { Page } from '../frame/page';
import { Section } from '../frame/section';
import { siteAddress } from '../frame/site-address';
import { FeedsSection } from './feeds-section';
import { NobodyList } from './nobody-list';
import { OnLine } from './on-line';
import { PeopleTable } from './people-table';
import { RestList } from './rest-list';
import { RotaChart } from './rota-chart';
import { RotaTable } from './rota-table';
import type { RotaView } from './rota-view';
import { LackingList, TwoSitesList } from './warning-lists';
import { ZoneNote } from './zone-note';

interface RotaBodyProps {
  page: RotaView;
  /** Who did not answer their last test call. */
  missed: MissedView[];
  make: FormAction<{ address: string }>;
  end: FormAction<unknown>;
}

/** Who can come, and when. */
export function RotaBody({ page, missed, make, end }: RotaBodyProps) {
  const { site, days, now } = page;
  return (
    <Page
      title="Rota"
      over={[
        { href: '/', name: 'Systems' },
        { href: siteAddress(site.key), name: site.name },
      ]}
      lead={
        <>
          <OnLine zone={site.zone} now={now} view={page.on} />
          <p>
            <Link href={siteAddress(site.key, 'rota', 'cover')}>Cover</Link>: the time to spare at each hour, and what a
            change of people would make of it.
          </p>
          <p>
            <ZoneNote zone={site.zone} />
          </p>
          <Ways site={site.key} open={page.openChanges} />
        </>
      }
    >
      <Section
        id="days"
        wide
        title="The coming fortnight"
        note="On site: a full bar. On call: an open one. Nobody: hatched."
      >
        <RotaChart days={days} now={now} />
        <Fold title="The chart as a table">
          <RotaTable days={days} zone={site.zone} />
        </Fold>
        <Edit page={page} />
      </Section>
      <Reached page={page} missed={missed} />
      <Section id="calendar" title="In your calendar">
        <FeedsSection
          site={site.key}
          zone={site.zone}
          feeds={page.feeds}
          isOnRota={page.isOnRota}
          make={make}
          end={end}
        />
      </Section>
    </Page>
  );
}

/** The week as a time table, and leave and swaps. */
function Ways({ site, open }: { site: string; open: number }) {
  return (
    <p>
      <Link href={siteAddress(site, 'rota/week')}>The week as a time table</Link> ·{' '}
      <Link href={siteAddress(site, 'rota/changes')}>Leave and swaps</Link>
      {open === 0 ? null : `, ${open} waiting for an answer`}
    </p>
  );
}

function Reached({ page, missed }: Pick<RotaBodyProps, 'page' | 'missed'>) {
  const { site, nobody, people, isMailed, warnings } = page;
  return (
    <>
      <Section id="nobody" title="Hours with nobody">
        <NobodyList nobody={nobody} zone={site.zone} />
      </Section>
      {page.lacking.length > 0 ? (
        <Section
          id="lacking"
          title="Competences nobody on duty has"
          note="In the coming fortnight, hours with nobody among them."
        >
          <LackingList lacking={page.lacking} zone={site.zone} />
        </Section>
      ) : null}
      {page.twoSites.length > 0 ? (
        <Section id="two-sites" title="At two sites at once">
          <TwoSitesList twoSites={page.twoSites} zone={site.zone} />
        </Section>
      ) : null}
      <Section id="people" wide title="How soon, and how reached">
        <MissedTests site={site} missed={missed} />
        {people.length === 0 ? <p>Nobody is described.</p> : <PeopleTable people={people} isMailed={isMailed} />}
        {page.mayPeople ? (
          <p>
            <Link href={`${siteAddress(site.key)}/people`}>People</Link> says which account is whose on the rota.
          </p>
        ) : null}
      </Section>
      <Section
        id="rest"
        title="Rest"
        note="Warnings and nothing more: which rules bind you, your own law says. Being on call at home counts as rest here; being called out ends it. In an emergency, whoever can come comes."
      >
        <RestList warnings={warnings} zone={site.zone} />
      </Section>
    </>
  );
}

function Edit({ page: { site, mayDescribe } }: { page: RotaView }) {
  if (!mayDescribe) return null;
  const at = `${siteAddress(site.key)}/describe`;
  return (
    <p>
      <Link href={`${at}#of-the-site`}>Change shifts and people</Link> in the description. A change of the rota changes
      the reviews.
    </p>
  );
}
