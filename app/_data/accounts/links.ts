import 'server-only';
import { database } from '../client';
import type { Transaction } from '../transaction';
import { noteEvent } from './events';
import { hashOf, newToken } from './token';

const HOUR_MS = 3_600_000;

/** What a one-time link is for. */
export type LinkPurpose = 'set-up' | 'join' | 'reset';

/** ms a link may be used in, by what it is for. */
const LIFE_MS: Record<LinkPurpose, number> = { 'set-up': 24 * HOUR_MS, join: 7 * 24 * HOUR_MS, reset: HOUR_MS };

/** A link that may still be used. */
export interface LiveLink {
  purpose: LinkPurpose;
  /** Whose it is; null for the link that sets Holdfast up. */
  accountId: string | null;
  /** Their address and name, as far as they are known. */
  email: string | null;
  name: string | null;
}

/**
 * Makes a link for an account that works once. Those made before for the same purpose lead nowhere from now on.
 *
 * @param madeBy   account that makes it, `local`, or `mail` when somebody asked for it themselves
 * @returns        its token, which is kept nowhere: the address is `/PURPOSE/TOKEN`
 */
export async function makeLink(
  tx: Transaction,
  { purpose, accountId, madeBy }: { purpose: 'join' | 'reset'; accountId: string; madeBy: string },
  at: Date,
): Promise<string> {
  const token = newToken();
  await tx.oneTimeLink.updateMany({ where: { purpose, accountId, usedAt: null }, data: { expiresAt: at } });
  const expiresAt = new Date(at.getTime() + LIFE_MS[purpose]);
  await tx.oneTimeLink.create({
    data: { tokenHash: hashOf(token), purpose, accountId, madeBy, createdAt: at, expiresAt },
  });
  await noteEvent(tx, { kind: 'link-made', accountId, by: madeBy, detail: { purpose } }, at);
  return token;
}

/**
 * Makes the links of an account lead nowhere.
 *
 * @param besides   those made by this account go on, as do those that were mailed because their person asked
 */
export async function endLinks(tx: Transaction, accountId: string, at: Date, besides?: string): Promise<void> {
  const others = besides === undefined ? {} : { madeBy: { notIn: [besides, 'local', 'mail'] } };
  await tx.oneTimeLink.updateMany({
    where: { accountId, usedAt: null, expiresAt: { gt: at }, ...others },
    data: { expiresAt: at },
  });
}

/** The link of this token, if it may still be used. */
export async function findLink(purpose: LinkPurpose, token: string, at: Date): Promise<LiveLink | null> {
  const found = await database().oneTimeLink.findFirst({
    where: { tokenHash: hashOf(token), purpose, usedAt: null, expiresAt: { gt: at } },
    select: { accountId: true, account: { select: { email: true, name: true, endedAt: true } } },
  });
  if (!found || (found.account && found.account.endedAt !== null)) return null;
  const { accountId, account } = found;
  return { purpose, accountId, email: account?.email ?? null, name: account?.name ?? null };
}

/**
 * Uses a link up, in the transaction of what it allows: of two who use it at once, one does.
 *
 * @returns   whose it was (null for the set-up link), or false when it may not be used
 */
export async function useLink(
  tx: Transaction,
  { purpose, token }: { purpose: LinkPurpose; token: string },
  at: Date,
): Promise<{ accountId: string | null } | false> {
  const where = { tokenHash: hashOf(token), purpose, usedAt: null, expiresAt: { gt: at } };
  const { count } = await tx.oneTimeLink.updateMany({ where, data: { usedAt: at } });
  if (count === 0) return false;
  const { accountId } = await tx.oneTimeLink.findUniqueOrThrow({ where: { tokenHash: hashOf(token) } });
  await noteEvent(tx, { kind: 'link-used', accountId, by: accountId, detail: { purpose } }, at);
  return { accountId };
}
