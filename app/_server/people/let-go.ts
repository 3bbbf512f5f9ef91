import 'server-only';
import type { z } from 'zod';
import { ok, type Result, refused } from '#core/result';
import { endAccount } from '#data/accounts/accounts';
import { changeMember, hasRoleElsewhere } from '#data/accounts/members';
import { type Duty, openDuties } from '#data/accounts/open-duties';
import { appendRecords } from '#data/records/append-records';
import { memberPlace } from '#shape/people/member';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { dayIn } from '../local-day';
import { isLastAdmin, LAST_ADMIN, withMember } from './with-member';

export const letGoShape = memberPlace;

/** What somebody leaves behind. */
export interface Left {
  /** What is still theirs to do at the site, and has to go to somebody else. */
  duties: Duty[];
  /** Whether they may not sign in any more, having no role anywhere else. */
  isEnded: boolean;
}

/**
 * Somebody has left: their access to the site ends with their next request, and without a role anywhere else they do not
 * sign in any more. What is still theirs to do is told.
 */
export async function letGo(who: Who, input: z.output<typeof letGoShape>): Promise<Result<Left, Refusal>> {
  return await withMember(who, input, async (held) => {
    const { tx, site, member, at } = held;
    const { accountId, role, personId } = member;
    if (await isLastAdmin(held)) return refused(LAST_ADMIN);
    await changeMember(tx, { siteId: site.id, accountId }, { endedAt: at });
    const body = { by: who.id, account: accountId, role, person: personId };
    await appendRecords(tx, site.id, [{ kind: 'member-left', body }], at);
    const isEnded = !(await hasRoleElsewhere(tx, accountId, site.id));
    if (isEnded) await endAccount(tx, accountId, who.id, at);
    const duties = await openDuties(site.id, dayIn(site.zone, at));
    return ok({ duties: duties.get(accountId) ?? [], isEnded });
  });
}
