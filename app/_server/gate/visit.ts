import 'server-only';
import { type Origin, originOf } from './origin';

/** A request before it is known who sent it. */
export interface Visit {
  origin: Origin;
  /** Address of the machine it came from; `here` when it was made on this one. */
  address: string;
  /** What the browser calls itself. */
  browser: string;
  /** Token of its session cookie, if it has one. */
  token: string | null;
}

/** Characters of a token of ours: anything else is not looked up. */
const TOKEN = /^[\w-]{43}$/;

/**
 * Name of the session cookie. Behind https it has the prefix by which a browser takes it from this very host alone, for every
 * path, and never without encryption (RFC 6265bis, 4.1.3).
 */
export function sessionCookieName({ isSecure }: Pick<Origin, 'isSecure'>): string {
  return isSecure ? '__Host-holdfast-session' : 'holdfast-session';
}

/**
 * What a request says of itself.
 *
 * @returns   null when it was made by a name that is not ours
 */
export function visitOf(headers: Pick<Headers, 'get'>): Visit | null {
  const origin = originOf(headers);
  if (!origin) return null;
  const token = cookieNamed(headers.get('cookie') ?? '', sessionCookieName(origin));
  return {
    origin,
    address: addressOf(headers, origin),
    browser: headers.get('user-agent') ?? '',
    token: token !== null && TOKEN.test(token) ? token : null,
  };
}

/** The server listens to this machine alone, so other machines come by way of a proxy, which adds whom it speaks for. */
function addressOf(headers: Pick<Headers, 'get'>, { isLoopback }: Origin): string {
  if (isLoopback) return 'here';
  return headers.get('x-forwarded-for')?.split(',').at(-1)?.trim() ?? 'unknown';
}

function cookieNamed(cookies: string, name: string): string | null {
  for (const cookie of cookies.split(';')) {
    const at = cookie.indexOf('=');
    if (at > 0 && cookie.slice(0, at).trim() === name) return cookie.slice(at + 1).trim();
  }
  return null;
}
