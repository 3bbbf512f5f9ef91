import 'server-only';
import type { Role } from '#core/rota/rota';
import { findAccountByEmail, makeAccount } from '#data/accounts/accounts';
import { makeLink } from '#data/accounts/links';
import type { Transaction } from '#data/transaction';

/** Whose account it is. */
export interface NewAccount {
  email: string;
  name: string;
  /** Role at every site, if any. */
  everywhere?: Role | null;
}

/**
 * Makes an account for somebody, and the link by which they choose their password: `/join/TOKEN`, good for a week.
 *
 * @param by   account that does it, or `local`
 * @returns    the account and the token; null when the address has an account already
 */
export async function newAccount(
  tx: Transaction,
  { email, name, everywhere = null }: NewAccount,
  by: string,
  at: Date,
): Promise<{ accountId: string; token: string } | null> {
  const accountId = await makeAccount(tx, { email, name, everywhere }, by, at);
  if (accountId === null) return null;
  return { accountId, token: await makeLink(tx, { purpose: 'join', accountId, madeBy: by }, at) };
}

/**
 * Makes a link for somebody who cannot sign in: `/reset/TOKEN`, good for an hour.
 *
 * @param by   account that does it, or `local`
 * @returns    the token; null when no account with this address may sign in
 */
export async function letBackIn(tx: Transaction, email: string, by: string, at: Date): Promise<string | null> {
  const account = await findAccountByEmail(email);
  if (!account || account.endedAt !== null) return null;
  return await makeLink(tx, { purpose: 'reset', accountId: account.id, madeBy: by }, at);
}
