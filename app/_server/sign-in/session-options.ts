import 'server-only';
import type { NextAuthOptions } from 'next-auth';
import { beginSession, findLiveSession, SESSION_MS, type Way } from '#data/accounts/sessions';
import { now } from '../clock';
import { sessionCookieName, type Visit } from '../gate/visit';
import { ownPath } from './own-path';

/**
 * How next-auth keeps a session: as a row of our own. What it takes for a signed token is our opaque one, minted with the row
 * at sign-in and handed back as it is afterwards, so that a session ends when the row does.
 *
 * @param visit   the request that signs in
 */
export function sessionOptions(visit: Visit): Omit<NextAuthOptions, 'providers'> {
  const { origin, browser, token: former } = visit;
  const maxAge = SESSION_MS / 1000;
  return {
    session: { strategy: 'jwt', maxAge },
    cookies: {
      sessionToken: {
        name: sessionCookieName(origin),
        options: { httpOnly: true, sameSite: 'lax', path: '/', secure: origin.isSecure },
      },
    },
    jwt: {
      maxAge,
      encode: async ({ token }) => {
        if (typeof token?.token === 'string') return token.token;
        if (token?.sub === undefined || !isWay(token.way)) throw new Error('A session begins by signing in.');
        const begun = await beginSession({ accountId: token.sub, way: token.way, browser, former }, now());
        if (begun === null) throw new Error('An account that has ended signs in no more.');
        return begun;
      },
      decode: async ({ token }) => {
        const session = token === undefined ? null : await findLiveSession(token, now());
        return session && { sub: session.accountId, token };
      },
    },
    callbacks: {
      // Nothing of the person goes along: what is known of them is asked of the database.
      jwt: ({ token, account, user }) => (account ? { sub: user.id, way: account.provider } : token),
      redirect: ({ url }) => ownPath(url),
    },
  };
}

function isWay(word: unknown): word is Way {
  return word === 'password' || word === 'passkey' || word === 'outside';
}
