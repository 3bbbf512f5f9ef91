import 'server-only';
import { canSignIn } from '#data/accounts/accounts';
import { makeLink } from '#data/accounts/links';
import type { Transaction } from '#data/transaction';
import { wake } from '#data/wake';
import { linkAddress } from '../accounts/link-address';
import { isMailConfigured } from '../mail/send-mail';

/** How a link comes to whom it is for: by mail, or shown once to whoever made it. */
export type LinkOut = { way: 'mail' } | { way: 'shown'; address: string };

/** Name of the task that mails a link: that of its file. */
const TASK = 'mail-link';

/**
 * Makes the link by which somebody joins, or chooses a new password when they have joined. Where mail is sent, a worker makes
 * it and mails it, so that no token lies in a queue and nobody but the person sees it.
 *
 * @param madeBy   account that makes it, or `local`
 */
export async function linkOut(tx: Transaction, accountId: string, madeBy: string, at: Date): Promise<LinkOut> {
  if (isMailConfigured()) {
    await wake(tx, TASK, { account: accountId, madeBy }, { key: `${TASK}:${accountId}` });
    return { way: 'mail' };
  }
  return { way: 'shown', address: await makeAddress(tx, accountId, madeBy, at) };
}

/** Makes the link itself. @returns its whole address */
export async function makeAddress(tx: Transaction, accountId: string, madeBy: string, at: Date): Promise<string> {
  const purpose = (await canSignIn(tx, accountId)) ? 'reset' : 'join';
  return linkAddress(purpose, await makeLink(tx, { purpose, accountId, madeBy }, at));
}
