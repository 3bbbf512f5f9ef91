import 'server-only';
import { findAccount } from '#data/accounts/accounts';
import { makeLink } from '#data/accounts/links';
import { inTransaction } from '#data/transaction';
import { now } from '../clock';
import { logInfo } from '../log';
import { isMailConfigured, sendMail } from '../mail/send-mail';
import { linkAddress } from './link-address';

/**
 * Sends the link by which somebody chooses a new password, if the address they named has an account. A try that fails is made
 * again with another link, and the one before leads nowhere.
 *
 * @param accountId   null when it has none
 * @throws            when the mail server does not take it
 */
export async function mailReset(accountId: string | null): Promise<void> {
  const account = accountId === null ? null : await findAccount(accountId);
  if (!account || account.endedAt !== null || account.email === null) return;
  if (!isMailConfigured())
    return logInfo('a link was asked for and no mail is sent from here', { account: account.id });
  const { id, email } = account;
  const token = await inTransaction((tx) => makeLink(tx, { purpose: 'reset', accountId: id, madeBy: 'mail' }, now()));
  await sendMail({ to: email, subject: 'A new password for Holdfast', text: words(linkAddress('reset', token)) });
}

function words(link: string): string {
  return `Somebody, probably you, asked for a new password for Holdfast.

Choose it here, within an hour:
${link}

The link works once. If it was not you, nothing has changed and you need do nothing.
`;
}
