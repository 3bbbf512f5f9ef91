import 'server-only';
import { canSignIn } from '#data/accounts/accounts';
import { makeLink } from '#data/accounts/links';
import type { Transaction } from '#data/transaction';
import { wake } from '#data/wake';
import { env } from '../env';
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
  return { way: 'shown', address: await linkAddress(tx, accountId, madeBy, at) };
}

/** Makes the link itself. @returns its whole address, or its path where Holdfast was not told its own address */
export async function linkAddress(tx: Transaction, accountId: string, madeBy: string, at: Date): Promise<string> {
  const purpose = (await canSignIn(tx, accountId)) ? 'reset' : 'join';
  const token = await makeLink(tx, { purpose, accountId, madeBy }, at);
  const path = `/${purpose}/${token}`;
  const address = env().HOLDFAST_ADDRESS;
  return address === undefined ? path : new URL(path, address).href;
}
