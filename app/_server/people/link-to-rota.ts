import 'server-only';
import type { z } from 'zod';
import { ok, type Result, refused } from '#core/result';
import { changeMember, listRotaPeople } from '#data/accounts/members';
import { appendRecords } from '#data/records/append-records';
import { rotaLink } from '#shape/people/member';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { withMember } from './with-member';

export const linkToRotaShape = rotaLink;

/** Says whom of the rota an account is, so that their duties are known when they go. */
export async function linkToRota(
  who: Who,
  input: z.output<typeof linkToRotaShape>,
): Promise<Result<{ person: string | null }, Refusal>> {
  return await withMember(who, input, async ({ tx, site, member, all, at }) => {
    const people = await listRotaPeople(site.id);
    const person = people.find(({ key }) => key === input.person) ?? null;
    if (input.person !== undefined && !person) return refused({ why: 'not-found', what: 'person' });
    const personId = person?.id ?? null;
    if (personId === member.personId) return ok({ person: person?.key ?? null });
    if (personId !== null && all.some((other) => other.personId === personId))
      return refused({ why: 'conflict', now: 'Somebody else is that person of the rota already.' });
    await changeMember(tx, { siteId: site.id, accountId: member.accountId }, { personId });
    const body = { by: who.id, account: member.accountId, person: personId };
    await appendRecords(tx, site.id, [{ kind: 'member-linked', body }], at);
    return ok({ person: person?.key ?? null });
  });
}
