import 'server-only';
import CredentialsProvider from 'next-auth/providers/credentials';
import type { Way } from '#data/accounts/sessions';
import type { Visit } from '../gate/visit';
import { askNextAuth, type AuthRequest } from './next-auth';
import { ownPath } from './own-path';
import { sessionOptions } from './session-options';
import { cookiesOf, type SetCookie } from './set-cookie';

/** What a browser is told when somebody has signed in. */
export interface Entered {
  cookies: SetCookie[];
  /** Path of the page to go on to. */
  to: string;
}

/**
 * Begins a session for somebody who has just proved who they are.
 *
 * @param way   how they did
 * @param to    where they wanted to go
 * @throws      when the account has ended at this very moment
 */
export async function enter(
  visit: Visit,
  { accountId, way, to }: { accountId: string; way: Way; to?: string | undefined },
): Promise<Entered> {
  const proved = CredentialsProvider({ id: way, credentials: {}, authorize: async () => ({ id: accountId }) });
  const options = { ...sessionOptions(visit), providers: [proved] };
  const plain: AuthRequest = { path: ['csrf'], method: 'GET', query: {}, body: {}, cookies: {}, origin: visit.origin };
  // What sent us here was a form of our own, which Next has seen to; next-auth wants its own mark of it besides.
  const mark = await askNextAuth(plain, options);
  const { csrfToken } = mark.body as { csrfToken: string };
  const cookies = Object.fromEntries(cookiesOf(mark.headers).map(({ name, value }) => [name, value]));
  const path = ['callback', way];
  const answer = await askNextAuth({ ...plain, path, method: 'POST', body: { csrfToken }, cookies }, options);
  const session = cookiesOf(answer.headers).filter(({ name }) => name === options.cookies?.sessionToken?.name);
  if (session.length !== 1) throw new Error('Signing in gave no session.');
  return { cookies: session, to: ownPath(to) };
}
