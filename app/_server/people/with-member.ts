import 'server-only';
import { type Result, refused } from '#core/result';
import { type Held, hasAdminEverywhere, holdMembers } from '#data/accounts/members';
import type { SiteEntry } from '#data/sites';
import { inTransaction, type Transaction } from '#data/transaction';
import { now } from '../clock';
import type { Verb } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';

/** One member of a site, held while something of theirs is changed. */
export interface HeldMember {
  tx: Transaction;
  site: SiteEntry;
  member: Held;
  /** Everybody who has a role there, this one too. */
  all: Held[];
  at: Date;
}

const VERB: Verb = 'people';

/**
 * Does something with somebody who has a role at a site, in one transaction, with all its members held.
 *
 * @param place   site and account
 * @param work    what to do
 */
export async function withMember<T>(
  who: Who,
  place: { site: string; account: string },
  work: (held: HeldMember) => Promise<Result<T, Refusal>>,
): Promise<Result<T, Refusal>> {
  const site = await siteFor(who, VERB, place.site);
  if (!site.ok) return site;
  const at = now();
  return await inTransaction(async (tx) => {
    const all = await holdMembers(tx, site.value.id);
    const member = all.find(({ accountId }) => accountId === place.account);
    if (!member) return refused({ why: 'not-found', what: 'person' });
    return await work({ tx, site: site.value, member, all, at });
  });
}

/** Whether a site would be left without an administrator if this member were none any more. */
export async function isLastAdmin({ tx, member, all }: Pick<HeldMember, 'tx' | 'member' | 'all'>): Promise<boolean> {
  if (member.role !== 'admin') return false;
  const others = all.filter(
    ({ accountId, role, isEnded }) => accountId !== member.accountId && role === 'admin' && !isEnded,
  );
  return others.length === 0 && !(await hasAdminEverywhere(tx));
}

/** Why the last administrator stays one. */
export const LAST_ADMIN: Refusal = {
  why: 'conflict',
  now: 'This is the last administrator of the site: make somebody else one first.',
};
