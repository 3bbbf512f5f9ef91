import 'server-only';
import { findAccount } from '#data/accounts/accounts';
import { inTransaction } from '#data/transaction';
import { now } from '../clock';
import { logInfo } from '../log';
import { isMailConfigured, sendMail } from '../mail/send-mail';
import { linkFor, type MadeLink } from './link-out';

/**
 * Makes somebody's link and mails it to them. It is made anew when the mail has to be tried again: the token is kept
 * nowhere, and only the last one leads anywhere.
 *
 * @param account   null when an address was named that has none
 * @param madeBy    account that had it made, `local`, or `mail` when they asked for it themselves
 * @throws          when the mail server does not take it
 */
export async function mailLink({ account, madeBy }: { account: string | null; madeBy: string }): Promise<void> {
  const found = account === null ? null : await findAccount(account);
  // Somebody may have left, or been erased, before the worker came to it.
  if (!found?.email || found.endedAt !== null) return;
  const { id, email } = found;
  if (madeBy === 'mail' && !isMailConfigured())
    return logInfo('a link was asked for and no mail is sent from here', { account: id });
  const link = await inTransaction((tx) => linkFor(tx, id, madeBy, now()));
  await sendMail({ to: email, ...message(link, madeBy === 'mail') });
}

function message({ purpose, address }: MadeLink, isAskedFor: boolean): { subject: string; text: string } {
  const subject = purpose === 'join' ? 'You have been let in to Holdfast' : 'A new password for Holdfast';
  const [first, last] = purpose === 'join' ? [JOINING, UNEXPECTED] : isAskedFor ? [ASKED, NOT_YOU] : [MADE, UNEXPECTED];
  return { subject, text: `${first}\n\n${address}\n\nThe link works once. ${last}\n` };
}

const JOINING = 'Somebody has given you access to Holdfast. Choose how you sign in here, within seven days:';
const MADE = 'An administrator has had this link made for you. Choose a new password here, within an hour:';
const ASKED = 'Somebody, probably you, asked for a new password for Holdfast. Choose it here, within an hour:';
const UNEXPECTED = 'If you expected nothing of the kind, leave it alone.';
const NOT_YOU = 'If it was not you, nothing has changed and you need do nothing.';
