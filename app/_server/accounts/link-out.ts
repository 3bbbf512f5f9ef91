import 'server-only';
import { canSignIn } from '#data/accounts/accounts';
import { makeLink } from '#data/accounts/links';
import type { Transaction } from '#data/transaction';
import { wake } from '#data/wake';
import { isMailConfigured } from '../mail/send-mail';
import { linkAddress } from './link-address';

/** How a link comes to whom it is for: by mail, or shown once to whoever made it. */
export type LinkOut = { way: 'mail' } | { way: 'shown'; address: string };

/** A link that was made: what it is for, and its whole address. */
export interface MadeLink {
  purpose: 'join' | 'reset';
  address: string;
}

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
  const { address } = await linkFor(tx, accountId, madeBy, at);
  return { way: 'shown', address };
}

/**
 * Has a worker mail somebody the link to a new password that they asked for themselves, and nobody when no account has the
 * address they named.
 */
export async function resetByMail(tx: Transaction, accountId: string | null): Promise<void> {
  await wake(tx, TASK, { account: accountId, madeBy: 'mail' });
}

/**
 * Makes the link itself: to a new password for whoever asked for that, or has joined already; else to join.
 *
 * @param madeBy   account that makes it, `local`, or `mail` when somebody asked for it themselves
 */
export async function linkFor(tx: Transaction, accountId: string, madeBy: string, at: Date): Promise<MadeLink> {
  const purpose = madeBy === 'mail' || (await canSignIn(tx, accountId)) ? 'reset' : 'join';
  return { purpose, address: linkAddress(purpose, await makeLink(tx, { purpose, accountId, madeBy }, at)) };
}
