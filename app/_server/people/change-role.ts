import 'server-only';
import type { z } from 'zod';
import { ok, type Result, refused } from '#core/result';
import type { Role } from '#core/rota/rota';
import { changeMember } from '#data/accounts/members';
import { appendRecords } from '#data/records/append-records';
import { roleChange } from '#shape/people/member';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { ABOVE_SITE, isAboveSite } from './above-site';
import { isLastAdmin, LAST_ADMIN, withMember } from './with-member';

export const changeRoleShape = roleChange;

/** Gives somebody another role at a site. It holds from their next request on. */
export async function changeRole(
  who: Who,
  input: z.output<typeof changeRoleShape>,
): Promise<Result<{ role: Role }, Refusal>> {
  return await withMember(who, input, async (held) => {
    const { tx, site, member, at } = held;
    const { role } = input;
    if (role === member.role) return ok({ role });
    if (await isLastAdmin(held)) return refused(LAST_ADMIN);
    if (await isAboveSite(who, member.accountId, role)) return refused(ABOVE_SITE);
    await changeMember(tx, { siteId: site.id, accountId: member.accountId }, { role });
    const body = { by: who.id, account: member.accountId, was: member.role, role };
    await appendRecords(tx, site.id, [{ kind: 'role-changed', body }], at);
    return ok({ role });
  });
}
