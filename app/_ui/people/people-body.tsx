import Link from '../frame/link';
import { MissedTests, type MissedView } from '../calls/missed-tests';
import type { FormAction } from '../form/answer';
import { Page } from '../frame/page';
import { Section } from '../frame/section';
import { siteAddress } from '../frame/site-address';
import { type Column, Ledger } from '../table/ledger';
import { instantSaid } from '../words/instant';
import { type Invited, InviteForm } from './invite-form';
import style from './people.module.css';
import { calledSo, type MemberView, type PeopleView, ROLE_NAMES } from './people-view';

interface PeopleBodyProps {
  page: PeopleView;
  /** Who did not answer their last test call. */
  missed: MissedView[];
  /** Lets somebody in. */
  invite: FormAction<Invited>;
}

/** Who may do what at a site. */
export function PeopleBody({ page, missed, invite }: PeopleBodyProps) {
  const { site, members, left, everywhere, isMailed } = page;
  const at = siteAddress(site.key);
  return (
    <Page
      title="People"
      over={[
        { href: '/', name: 'Systems' },
        { href: at, name: site.name },
      ]}
      lead={<Lead site={site} missed={missed} />}
    >
      <Section id="members" title="With access" wide>
        {members.length === 0 ? (
          <p>Nobody has a role here yet.</p>
        ) : (
          <Ledger
            caption={`Times are those of ${site.zone}.`}
            columns={columnsOf(page, at)}
            rows={members}
            keyOf={({ account }) => account}
          />
        )}
        {everywhere.map(({ account, name, role }) => (
          <p key={account} className={style.everywhere}>
            {name ?? 'Somebody'} looks after Holdfast itself and is {ROLE_NAMES[role]} at every site.
          </p>
        ))}
      </Section>
      <Section
        id="invite"
        title="Let somebody in"
        note={isMailed ? 'The link is mailed to them.' : 'No mail server was named, so the link is shown to you, once.'}
      >
        <InviteForm site={site.key} invite={invite} />
      </Section>
      {left.length > 0 ? (
        <Section id="left" title="Who have left" wide>
          <Ledger
            caption="What is still theirs to do has to go to somebody else."
            columns={columnsOf(page, at)}
            rows={left}
            keyOf={({ account }) => account}
          />
        </Section>
      ) : null}
    </Page>
  );
}

function Lead({ site, missed }: { site: PeopleView['site']; missed: MissedView[] }) {
  return (
    <>
      <p>Who may do what at {site.name}. Every change stands in its record, under an id and without a name.</p>
      <MissedTests site={site} missed={missed} />
    </>
  );
}

function columnsOf({ site, rota }: PeopleView, at: string): Column<MemberView>[] {
  return [
    {
      id: 'name',
      head: 'Who',
      cell: (member) => <Link href={`${at}/people/${member.account}`}>{calledSo(member)}</Link>,
    },
    { id: 'role', head: 'Role', cell: ({ role }) => ROLE_NAMES[role] },
    {
      id: 'rota',
      head: 'On the rota',
      cell: ({ person }) => (person === null ? 'nobody' : (rota.find(({ key }) => key === person)?.name ?? person)),
    },
    { id: 'duties', head: 'Open duties', figure: true, cell: ({ duties }) => duties.length },
    {
      id: 'since',
      head: 'Since, until',
      cell: ({ since, endedAt }) =>
        `${instantSaid(since, site.zone)}${endedAt === null ? '' : `, until ${instantSaid(endedAt, site.zone)}`}`,
    },
  ];
}
