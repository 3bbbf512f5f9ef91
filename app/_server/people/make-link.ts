import 'server-only';
import type { z } from 'zod';
import { ok, type Result, refused } from '#core/result';
import { hasRoleElsewhere } from '#data/accounts/members';
import { appendRecords } from '#data/records/append-records';
import { memberPlace } from '#shape/people/member';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { type LinkOut, linkOut } from '../accounts/link-out';
import { withMember } from './with-member';

export const makeLinkShape = memberPlace;

const ELSEWHERE: Refusal = {
  why: 'conflict',
  now: 'They have access elsewhere too, so nobody here makes a link for them: they ask for one by mail, or whoever looks after the machine makes it.',
};

/** Makes somebody a new link: to join, or to choose a new password. Links made for them before lead nowhere from then on. */
export async function makeMemberLink(
  who: Who,
  input: z.output<typeof makeLinkShape>,
): Promise<Result<LinkOut, Refusal>> {
  return await withMember(who, input, async ({ tx, site, member, at }) => {
    // Whoever has the link may do all that they may do, which must not be more than the site is asked for.
    if (await hasRoleElsewhere(tx, member.accountId, site.id)) return refused(ELSEWHERE);
    const link = await linkOut(tx, member.accountId, who.id, at);
    // Whoever is shown it can come in as them, and agree to their own plan in their name: the record tells that they could.
    const body = { by: who.id, account: member.accountId, link: link.way };
    await appendRecords(tx, site.id, [{ kind: 'link-made', body }], at);
    return ok(link);
  });
}
