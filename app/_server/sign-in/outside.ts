import 'server-only';
import { z } from 'zod';
import { ok, type Result, refused } from '#core/result';
import type { Refusal } from '../gate/refusal';
import { type Visit, visitOf } from '../gate/visit';
import { askNextAuth, type AuthRequest } from './next-auth';
import { outsideIssuer, outsideOptions } from './outside-options';
import { ownPath } from './own-path';
import { cookiesOf, type SetCookie } from './set-cookie';

export const toOutsideShape = z.object({ to: z.string().max(2000).optional() });

/** Where somebody ends up whom the issuer did not let in, or whom we do not know. */
const NOT_LET_IN = '/sign-in?problem=outside';

/** Sends a browser to the issuer. @returns where to, and the cookies by which it is known again when it comes back */
export async function toOutside(
  visit: Visit,
  { to }: z.output<typeof toOutsideShape>,
): Promise<Result<{ cookies: SetCookie[]; location: string }, Refusal>> {
  if (!outsideIssuer()) return refused({ why: 'not-allowed' });
  const options = outsideOptions(visit);
  const plain: AuthRequest = { path: ['csrf'], method: 'GET', query: {}, body: {}, cookies: {}, origin: visit.origin };
  const mark = await askNextAuth(plain, options);
  const { csrfToken } = mark.body as { csrfToken: string };
  const cookies = Object.fromEntries(cookiesOf(mark.headers).map(({ name, value }) => [name, value]));
  const body = { csrfToken, callbackUrl: ownPath(to) };
  const answer = await askNextAuth({ ...plain, path: ['signin', 'outside'], method: 'POST', body, cookies }, options);
  const location = answer.headers.get('Location') ?? NOT_LET_IN;
  // When the issuer does not answer, next-auth leads to a page of its own.
  return ok({ cookies: cookiesOf(answer.headers), location: leadsHere(location, visit) ? NOT_LET_IN : location });
}

/** Takes in a browser that comes back from the issuer: with a session when its person has an account, else without. */
export async function fromOutside(request: Request): Promise<Response> {
  const visit = visitOf(request.headers);
  if (!visit || !outsideIssuer()) return new Response(null, { status: 404 });
  const query = Object.fromEntries(new URL(request.url).searchParams);
  const cookies = Object.fromEntries(cookiesIn(request.headers.get('cookie') ?? ''));
  const path = ['callback', 'outside'];
  const asked: AuthRequest = { path, method: 'GET', query, body: {}, cookies, origin: visit.origin };
  const { headers } = await askNextAuth(asked, outsideOptions(visit));
  const location = headers.get('Location') ?? NOT_LET_IN;
  // next-auth leads on to where one wanted to go, by a path; where it failed, to a page of its own, by a whole address.
  headers.set('Location', location.startsWith('/') ? location : NOT_LET_IN);
  return new Response(null, { status: 302, headers });
}

function leadsHere(location: string, { origin }: Visit): boolean {
  return location.startsWith('/') || new URL(location).origin === origin.url;
}

function cookiesIn(line: string): [string, string][] {
  return line.split(';').flatMap((cookie) => {
    const at = cookie.indexOf('=');
    return at > 0 ? [[cookie.slice(0, at).trim(), decodeURIComponent(cookie.slice(at + 1).trim())]] : [];
  });
}
