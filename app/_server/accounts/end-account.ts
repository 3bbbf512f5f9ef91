import 'server-only';
import { endAccount } from '#data/accounts/accounts';
import { changeMember, holdMembers, sitesOf } from '#data/accounts/members';
import { appendRecords } from '#data/records/append-records';
import { inTransaction, type Transaction } from '#data/transaction';

/**
 * Ends an account and every role it has, each in the record of its site: an account that is let in again some day must not
 * come back with roles that nobody gave it then.
 *
 * @param by   account that does it, or `local`
 * @returns    false when nothing was left to be ended
 */
export async function endEverywhere(accountId: string, by: string, at: Date): Promise<boolean> {
  // The account first, since its access is to end at once; a transaction of its own for each site, as they may one day lie
  // on different machines. What is cut off in between can be done again.
  let isDone = await inTransaction((tx) => endAccount(tx, accountId, by, at));
  for (const siteId of await sitesOf(accountId)) {
    const hadRole = await inTransaction((tx) => endAt(tx, { siteId, accountId, by }, at));
    isDone ||= hadRole;
  }
  return isDone;
}

async function endAt(
  tx: Transaction,
  { siteId, accountId, by }: { siteId: string; accountId: string; by: string },
  at: Date,
): Promise<boolean> {
  const member = (await holdMembers(tx, siteId)).find((one) => one.accountId === accountId);
  if (!member) return false;
  await changeMember(tx, { siteId, accountId }, { endedAt: at });
  const body = { by, account: accountId, role: member.role, person: member.personId };
  await appendRecords(tx, siteId, [{ kind: 'member-left', body }], at);
  return true;
}
