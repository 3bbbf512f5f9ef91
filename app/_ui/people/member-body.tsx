import type { Role } from '#core/rota/rota';
import type { FormAction } from '../form/answer';
import { Page } from '../frame/page';
import { Section } from '../frame/section';
import { siteAddress } from '../frame/site-address';
import { instantSaid } from '../words/instant';
import { Duties } from './duties';
import { EraseForm, type LeftView, LetGoForm, LinkForm, RoleForm, RotaForm } from './member-forms';
import { calledSo, type LinkView, type MemberPageView, ROLE_NAMES } from './people-view';

/** What can be done about somebody. */
export interface MemberActions {
  changeRole: FormAction<{ role: Role }>;
  linkToRota: FormAction<{ person: string | null }>;
  makeLink: FormAction<LinkView>;
  letGo: FormAction<LeftView>;
  erase: FormAction<unknown>;
}

/** One person who has or had a role at a site. */
export function MemberBody({ page, actions }: { page: MemberPageView; actions: MemberActions }) {
  const { site, member, isYou } = page;
  const { role, since, endedAt, duties, name, email } = member;
  const at = siteAddress(site.key);
  const told = (instant: string) => instantSaid(instant, site.zone);
  return (
    <Page
      title={calledSo(member)}
      over={[
        { href: '/', name: 'Systems' },
        { href: at, name: site.name },
        { href: `${at}/people`, name: 'People' },
      ]}
      lead={
        <p>
          {endedAt === null ? 'Has access' : 'Had access'} as {ROLE_NAMES[role]} since {told(since)}
          {endedAt === null ? '' : `, until ${told(endedAt)}`}. {email ?? ''}
          {isYou ? ' This is you.' : ''}
        </p>
      }
    >
      <Section id="duties" title="Open duties" note="Shifts, safeguards taken off, plans not yet in force.">
        <Duties duties={duties} none="Nothing is theirs to do here." />
      </Section>
      {endedAt === null ? (
        <AccessSections page={page} actions={actions} />
      ) : (
        <Section id="erase" title="Erase" note="For somebody who has left everywhere.">
          {name === null && email === null ? (
            <p>Name and address are erased.</p>
          ) : (
            <EraseForm site={site.key} account={member.account} erase={actions.erase} />
          )}
        </Section>
      )}
    </Page>
  );
}

function AccessSections({ page, actions }: { page: MemberPageView; actions: MemberActions }) {
  const { site, member, rota, isMailed } = page;
  const place = { site: site.key, account: member.account };
  return (
    <>
      <Section id="role" title="Role">
        <RoleForm {...place} role={member.role} change={actions.changeRole} />
      </Section>
      <Section id="rota" title="On the rota" note="So that their shifts are known when they go.">
        <RotaForm {...place} person={member.person} rota={rota} link={actions.linkToRota} />
      </Section>
      <Section id="link" title="New link" note={isMailed ? 'Mailed to them.' : 'Shown to you, once.'}>
        <LinkForm {...place} make={actions.makeLink} />
      </Section>
      <Section id="leave" title="Has left">
        <LetGoForm {...place} name={calledSo(member)} letGo={actions.letGo} />
      </Section>
    </>
  );
}
