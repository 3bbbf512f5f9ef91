import 'server-only';
import type { Transaction } from '../transaction';
import { endAccount } from './accounts';
import { noteEvent } from './events';

/**
 * Erases what somebody is called at a site: in its rota, beside tests they did and safeguards they took off.
 *
 * @returns   whether the site told their name anywhere
 */
export async function eraseNamesAt(tx: Transaction, siteId: string, accountId: string): Promise<boolean> {
  const erased = await tx.$executeRaw`
    UPDATE person_name n SET name = NULL
      FROM membership m JOIN account a ON a.id = m.account_id
      LEFT JOIN person p ON p.site_id = m.site_id AND p.id = m.person_id
     WHERE m.site_id = ${siteId}::uuid AND m.account_id = ${accountId}::uuid AND n.site_id = m.site_id
       AND n.name IS NOT NULL AND (n.id = p.name_id OR n.name = a.name)`;
  return erased > 0;
}

/**
 * Erases who an account belonged to: name and address, what they signed in by, what their browsers called themselves. What
 * they did stays in the record, which holds their id alone.
 *
 * @param by   account that does it, or `local`
 */
export async function eraseAccount(tx: Transaction, accountId: string, by: string, at: Date): Promise<void> {
  await endAccount(tx, accountId, by, at);
  await tx.passkey.deleteMany({ where: { accountId } });
  await tx.passkeyChallenge.deleteMany({ where: { accountId } });
  await tx.outsideIdentity.deleteMany({ where: { accountId } });
  await tx.oneTimeLink.deleteMany({ where: { accountId } });
  await tx.session.updateMany({ where: { accountId }, data: { browser: '' } });
  await tx.account.update({ where: { id: accountId }, data: { name: null, email: null, passwordHash: null } });
  await noteEvent(tx, { kind: 'account-erased', accountId, by }, at);
}
