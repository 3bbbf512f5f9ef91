import 'server-only';
import type { z } from 'zod';
import { ok, type Result, refused } from '#core/result';
import type { Role } from '#core/rota/rota';
import { listEverywhere, listMembers, listRotaPeople, type Member } from '#data/accounts/members';
import { type Duty, openDuties } from '#data/accounts/open-duties';
import { memberPlace } from '#shape/people/member';
import { sitePlace } from '#shape/reviews/case-place';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';
import { dayIn } from '../local-day';
import { isMailConfigured } from '../mail/send-mail';

/** Somebody with a role at the site, or who had one. */
export interface MemberEntry {
  account: string;
  role: Role;
  /** Null once erased. */
  name: string | null;
  email: string | null;
  /** UTC, ISO. */
  since: string;
  endedAt: string | null;
  /** Key of the person of the rota they are. */
  person: string | null;
  duties: Duty[];
}

/** Who may do what at a site. */
export interface PeoplePage {
  site: { key: string; name: string; zone: string };
  members: MemberEntry[];
  left: MemberEntry[];
  /** Those with a role at every site. */
  everywhere: { account: string; name: string | null; role: Role }[];
  rota: { key: string; name: string | null }[];
  /** Whether links are mailed; else they are shown once. */
  isMailed: boolean;
}

export const listPeopleShape = sitePlace;

/** Who may do what at a site, who could once, and what each has to do there. */
export async function listPeople(
  who: Who,
  { site: key }: z.output<typeof listPeopleShape>,
): Promise<Result<PeoplePage, Refusal>> {
  const site = await siteFor(who, 'people', key);
  if (!site.ok) return site;
  const { id, name, zone } = site.value;
  const [members, duties, everywhere, rota] = await Promise.all([
    listMembers(id),
    openDuties(id, dayIn(zone, now())),
    listEverywhere(),
    listRotaPeople(id),
  ]);
  const entries = members.map((member) => entryOf(member, duties.get(member.accountId) ?? []));
  return ok({
    site: { key, name, zone },
    members: entries.filter(({ endedAt }) => endedAt === null),
    left: entries.filter(({ endedAt }) => endedAt !== null),
    everywhere: everywhere.map(({ accountId, ...rest }) => ({ account: accountId, ...rest })),
    rota: rota.map(({ key: person, name: called }) => ({ key: person, name: called })),
    isMailed: isMailConfigured(),
  });
}

export const getMemberShape = memberPlace;

/** One of them, with what a page about them needs. */
export interface MemberPage extends Omit<PeoplePage, 'members' | 'left' | 'everywhere'> {
  member: MemberEntry;
  /** Whether it is the person who asks. */
  isYou: boolean;
}

/** One person who has or had a role at a site. */
export async function getMember(
  who: Who,
  { site, account }: z.output<typeof getMemberShape>,
): Promise<Result<MemberPage, Refusal>> {
  const page = await listPeople(who, { site });
  if (!page.ok) return page;
  const { members, left, everywhere: _, ...rest } = page.value;
  const member = [...members, ...left].find((one) => one.account === account);
  if (!member) return refused({ why: 'not-found', what: 'person' });
  return ok({ ...rest, member, isYou: member.account === who.id });
}

function entryOf({ accountId, role, name, email, since, endedAt, person }: Member, duties: Duty[]): MemberEntry {
  const ended = endedAt?.toISOString() ?? null;
  const who = { account: accountId, role, name, email };
  return { ...who, since: since.toISOString(), endedAt: ended, person: person?.key ?? null, duties };
}
