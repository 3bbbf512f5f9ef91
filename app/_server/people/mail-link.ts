import 'server-only';
import { findAccount } from '#data/accounts/accounts';
import { inTransaction } from '#data/transaction';
import { now } from '../clock';
import { sendMail } from '../mail/send-mail';
import { makeAddress } from './link-out';

/**
 * Makes somebody's link and mails it to them. It is made anew when the mail has to be tried again: the token is kept
 * nowhere, and only the last one leads anywhere.
 *
 * @param madeBy   account that had it made, or `local`
 * @throws         when the mail server does not take it
 */
export async function mailLink({ account, madeBy }: { account: string; madeBy: string }): Promise<void> {
  const found = await findAccount(account);
  // Somebody may have left, or been erased, before the worker came to it.
  if (!found?.email || found.endedAt !== null) return;
  const address = await inTransaction((tx) => makeAddress(tx, account, madeBy, now()));
  const isJoining = address.includes('/join/');
  await sendMail({
    to: found.email,
    subject: isJoining ? 'You have been let in to Holdfast' : 'A new password for Holdfast',
    text: `${isJoining ? JOINING : CHOOSING}\n\n${address}\n\n${LAST_LINE}\n`,
  });
}

const JOINING = 'Somebody has given you access to Holdfast. Choose how you sign in here, within seven days:';
const CHOOSING = 'An administrator has had this link made for you. Choose a new password here, within an hour:';
const LAST_LINE = 'The link works once. If you expected nothing of the kind, leave it alone.';
