import 'server-only';
import type { z } from 'zod';
import { ok, type Result, refused } from '#core/result';
import type { Role } from '#core/rota/rota';
import { canSignIn, emailKey, findAccountByEmail, makeAccount, reopenAccount } from '#data/accounts/accounts';
import { endLinks } from '#data/accounts/links';
import { giveRole, hasRoleElsewhere, holdMembers } from '#data/accounts/members';
import { appendRecords } from '#data/records/append-records';
import { inTransaction, type Transaction } from '#data/transaction';
import { invitation } from '#shape/people/member';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';
import { type LinkOut, linkOut } from '../accounts/link-out';
import { isMailConfigured } from '../mail/send-mail';

export const inviteShape = invitation;

/** Somebody who was let in. */
export interface Invited {
  account: string;
  role: Role;
  /** How they come in; null for somebody who has access elsewhere and signs in as they do already. */
  link: LinkOut | null;
}

/** Lets somebody in at a site: their account, if they have none, their role, and the link by which they join. */
export async function invite(who: Who, input: z.output<typeof inviteShape>): Promise<Result<Invited, Refusal>> {
  const site = await siteFor(who, 'people', input.site);
  if (!site.ok) return site;
  const siteId = site.value.id;
  const at = now();
  return await inTransaction(async (tx) => {
    const all = await holdMembers(tx, siteId);
    const known = await findAccountByEmail(input.email);
    if (known && all.some(({ accountId }) => accountId === known.id))
      return refused({ why: 'conflict', now: 'Somebody with this address has access to the site already.' });
    const account = await accountFor(tx, input, { known, by: who.id, at });
    if (account === null) return refused(JUST_NOW);
    // A link to somebody who may do something elsewhere would let whoever is shown it do that too; one that is mailed is
    // seen by its person alone.
    const hasElsewhere = await hasRoleElsewhere(tx, account, siteId);
    // One that an administrator there was shown before must not lead in here.
    if (hasElsewhere) await endLinks(tx, account, at, who.id);
    await giveRole(tx, { siteId, accountId: account, role: input.role }, at);
    await appendRecords(tx, siteId, [letIn(who, account, input.role)], at);
    const isToBeMailed = isMailConfigured() && !(await canSignIn(tx, account));
    const link = hasElsewhere && !isToBeMailed ? null : await linkOut(tx, account, who.id, at);
    return ok({ account, role: input.role, link });
  });
}

const JUST_NOW: Refusal = { why: 'conflict', now: 'Somebody made an account with this address just now: try again.' };

const letIn = (who: Who, account: string, role: Role) => ({
  kind: 'member-let-in',
  body: { by: who.id, account, role },
});

/** The account of this address: as it is, let in again, or a new one. @returns null when it was made at this very moment */
async function accountFor(
  tx: Transaction,
  { email, name }: { email: string; name: string },
  { known, by, at }: { known: Awaited<ReturnType<typeof findAccountByEmail>>; by: string; at: Date },
): Promise<string | null> {
  if (!known) return await makeAccount(tx, { email: emailKey(email), name }, by, at);
  if (known.endedAt !== null) await reopenAccount(tx, known.id, by, at);
  return known.id;
}
