import 'server-only';
import { hashOf, newToken } from '../accounts/token';
import { database } from '../client';
import { newId } from '../new-id';
import type { Transaction } from '../transaction';

/** What a calendar reads: one's own shifts, everybody's, or when rounds are due. */
export type FeedScope = 'mine' | 'everybody' | 'rounds';

/** An address by which somebody's own calendar reads the rota. */
export interface Feed {
  id: string;
  scope: FeedScope;
  createdAt: Date;
}

/**
 * Makes an address for an account's calendar.
 *
 * @returns   the feed, and its token, which is kept nowhere
 */
export async function makeFeed(
  tx: Transaction,
  siteId: string,
  { accountId, scope }: { accountId: string; scope: FeedScope },
  at: Date,
): Promise<{ id: string; token: string }> {
  const id = newId();
  const token = newToken();
  await tx.calendarFeed.create({ data: { siteId, id, accountId, tokenHash: hashOf(token), scope, createdAt: at } });
  return { id, token };
}

/** Ends an address of an account. @returns whether it opened anything until then */
export async function endFeed(
  tx: Transaction,
  siteId: string,
  { id, accountId }: { id: string; accountId: string },
  at: Date,
): Promise<boolean> {
  const { count } = await tx.calendarFeed.updateMany({
    where: { siteId, id, accountId, endedAt: null },
    data: { endedAt: at },
  });
  return count > 0;
}

/** The addresses of an account at a site that were not ended, the oldest first. */
export async function feedsOf(
  siteId: string,
  accountId: string,
  asker: Pick<Transaction, 'calendarFeed'> = database(),
): Promise<Feed[]> {
  return (await asker.calendarFeed.findMany({
    where: { siteId, accountId, endedAt: null },
    select: { id: true, scope: true, createdAt: true },
    orderBy: { createdAt: 'asc' },
  })) as Feed[];
}

/** What a token opens. */
export interface OpenFeed {
  scope: FeedScope;
  /** Key of the person of the rota whose account it is; null when it is nobody's there. */
  person: string | null;
}

/**
 * What a token opens at a site; null when it opens nothing: it was ended, or the account was, or it has lost its role since.
 * A role that was given anew does not bring back what was made before.
 */
export async function findFeed(siteId: string, token: string): Promise<OpenFeed | null> {
  const [found] = await database().$queryRaw<OpenFeed[]>`
    SELECT f.scope, p.key AS person
      FROM calendar_feed f
      JOIN account a ON a.id = f.account_id AND a.ended_at IS NULL
      LEFT JOIN membership m ON m.site_id = f.site_id AND m.account_id = a.id AND m.ended_at IS NULL
                            AND m.since <= f.created_at
      LEFT JOIN person p ON p.site_id = m.site_id AND p.id = m.person_id AND p.retired_at IS NULL
     WHERE f.site_id = ${siteId}::uuid AND f.token_hash = ${hashOf(token)} AND f.ended_at IS NULL
       AND (m.account_id IS NOT NULL OR a.everywhere IS NOT NULL)`;
  return found ?? null;
}

/** Key of the person of the rota that an account is at a site; null when it is nobody there. */
export async function personOf(siteId: string, accountId: string): Promise<string | null> {
  const found = await database().membership.findFirst({
    where: { siteId, accountId, endedAt: null, person: { retiredAt: null } },
    select: { person: { select: { key: true } } },
  });
  return found?.person?.key ?? null;
}
