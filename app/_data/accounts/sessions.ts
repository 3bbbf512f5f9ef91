import 'server-only';
import type { Role } from '#core/rota/rota';
import { database } from '../client';
import { newId } from '../new-id';
import { inTransaction, type Transaction } from '../transaction';
import { noteEvent } from './events';
import { hashOf, newToken } from './token';

/** How somebody signed in. */
export type Way = 'password' | 'passkey' | 'outside';

/** ms a session lasts, whatever is done in it (OWASP Session Management: absolute time-out). */
export const SESSION_MS = 12 * 3_600_000;
/** ms within which a session is not noted as seen again. */
const SEEN_EVERY_MS = 60_000;
/** Characters kept of what a browser calls itself. */
const BROWSER_LENGTH = 200;

/** A session that may be used, with what its account may do. */
export interface LiveSession {
  id: string;
  accountId: string;
  /** What the person is called. */
  name: string;
  everywhere: Role | null;
  /** Roles by key of the site. */
  at: Record<string, Role>;
}

type Row = LiveSession & { seenAt: Date };

/**
 * The session of a token, if it may still be used: not ended, not too old, of an account that has not ended. Asked anew at
 * every request, so that ending a session, an account or a role takes effect at the next one.
 *
 * @param token   from the cookie
 * @param at      the instant
 */
export async function findLiveSession(token: string, at: Date): Promise<LiveSession | null> {
  const [row] = await database().$queryRaw<Row[]>`
    SELECT session.id, session.account_id AS "accountId", session.seen_at AS "seenAt",
           coalesce(account.name, account.email, '') AS name, account.everywhere,
           coalesce((SELECT jsonb_object_agg(site.key, membership.role)
                       FROM membership JOIN site ON site.id = membership.site_id
                      WHERE membership.account_id = account.id AND membership.ended_at IS NULL), '{}') AS at
      FROM session JOIN account ON account.id = session.account_id
     WHERE session.token_hash = ${hashOf(token)} AND session.ended_at IS NULL AND account.ended_at IS NULL
       AND session.expires_at > ${at.toISOString()}::timestamptz`;
  if (!row) return null;
  const { seenAt, ...session } = row;
  if (at.getTime() - seenAt.getTime() >= SEEN_EVERY_MS) await noteSeen(session.id, at);
  return session;
}

async function noteSeen(id: string, at: Date): Promise<void> {
  await database().session.updateMany({ where: { id, seenAt: { lt: at } }, data: { seenAt: at } });
}

/**
 * Begins a session with a token that nobody has had before; the one the browser had until now, if any, ends.
 *
 * @param former   token of the browser's cookie until now
 * @returns        the token, which is kept nowhere; null when the account has ended meanwhile
 */
export async function beginSession(
  { accountId, way, browser, former }: { accountId: string; way: Way; browser: string; former: string | null },
  at: Date,
): Promise<string | null> {
  const token = newToken();
  return await inTransaction(async (tx) => {
    const account = await tx.account.findFirst({ where: { id: accountId, endedAt: null }, select: { id: true } });
    if (!account) return null;
    if (former !== null)
      await tx.session.updateMany({ where: { tokenHash: hashOf(former), endedAt: null }, data: { endedAt: at } });
    const id = newId();
    await tx.session.create({
      data: {
        id,
        tokenHash: hashOf(token),
        accountId,
        createdAt: at,
        seenAt: at,
        expiresAt: new Date(at.getTime() + SESSION_MS),
        way,
        browser: browser.slice(0, BROWSER_LENGTH),
      },
    });
    await noteEvent(tx, { kind: 'signed-in', accountId, by: accountId, detail: { way, session: id } }, at);
    return token;
  });
}

/** Ends the session of a token; nothing happens when there is none. */
export async function endSessionOf(token: string, at: Date): Promise<void> {
  await inTransaction(async (tx) => {
    const session = await tx.session.findFirst({ where: { tokenHash: hashOf(token), endedAt: null } });
    if (!session) return;
    const { id, accountId } = session;
    await tx.session.update({ where: { id }, data: { endedAt: at } });
    await noteEvent(tx, { kind: 'signed-out', accountId, by: accountId, detail: { session: id } }, at);
  });
}

/** A session as its person sees it. */
export interface SessionEntry {
  id: string;
  createdAt: Date;
  seenAt: Date;
  expiresAt: Date;
  way: string;
  browser: string;
}

/** The sessions of an account that may still be used, the one seen last first. */
export async function listSessions(accountId: string, at: Date): Promise<SessionEntry[]> {
  return await database().session.findMany({
    where: { accountId, endedAt: null, expiresAt: { gt: at } },
    select: { id: true, createdAt: true, seenAt: true, expiresAt: true, way: true, browser: true },
    orderBy: [{ seenAt: 'desc' }, { id: 'desc' }],
  });
}

/** Ends one session of an account. @returns whether there was one to end */
export async function endSession(accountId: string, id: string, by: string, at: Date): Promise<boolean> {
  return await inTransaction(async (tx) => {
    const { count } = await tx.session.updateMany({ where: { id, accountId, endedAt: null }, data: { endedAt: at } });
    if (count > 0) await noteEvent(tx, { kind: 'session-ended', accountId, by, detail: { session: id } }, at);
    return count > 0;
  });
}

/**
 * Ends the sessions of an account, in the transaction of whatever demands it.
 *
 * @param except   session that goes on, if any
 * @returns        how many were ended
 */
export async function endSessions(
  tx: Transaction,
  { accountId, by, except = null }: { accountId: string; by: string; except?: string | null },
  at: Date,
): Promise<number> {
  const others = except === null ? {} : { id: { not: except } };
  const { count } = await tx.session.updateMany({
    where: { accountId, endedAt: null, ...others },
    data: { endedAt: at },
  });
  if (count > 0) await noteEvent(tx, { kind: 'sessions-ended', accountId, by, detail: { sessions: count } }, at);
  return count;
}

/** What the browser of a session called itself when it began; null when there is no such session. */
export async function browserOf(sessionId: string): Promise<string | null> {
  const found = await database().session.findUnique({ where: { id: sessionId }, select: { browser: true } });
  return found?.browser ?? null;
}
