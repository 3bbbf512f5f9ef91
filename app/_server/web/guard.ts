import 'server-only';
import { env } from '../env';
import { type Sent, type Stray, strayOf } from './own-request';
import { contentPolicy, isPrivate, safeHeaders, WALK_PAGE } from './safe-headers';

/** A request before anything of ours has seen it. */
interface Arriving extends Sent {
  /** Whole address. */
  url: string;
}

/** What becomes of a request: turned away with an answer, or let in with headers for both directions. */
export type Guarded =
  | { answer: Response }
  | {
      answer: null;
      /** For the pages: the policy, from which they take the word their scripts must bear. */
      policy: string;
      headers: Record<string, string>;
    };

const TURNED_AWAY: Record<Stray, { status: number; said: string }> = {
  'foreign-name': { status: 421, said: 'Holdfast does not answer to this name. Use the address it was set up with.' },
  'foreign-page': { status: 403, said: 'This did not come from a page of Holdfast, so nothing was done.' },
};

/** 16 bytes: more than can be guessed while an answer is shown. */
const NONCE_BYTES = 16;

/**
 * Stands before every page and handler: turns strays away, and gives every answer the headers that keep it safe.
 *
 * @param request    as it arrived
 * @param pathname   what it asks for; by its address when left out
 */
export function guard(request: Arriving, pathname = new URL(request.url).pathname): Guarded {
  const { HOLDFAST_ADDRESS: address, HOLDFAST_OIDC_ISSUER: issuer, HOLDFAST_HSTS: promise } = env();
  const isSecure = address?.startsWith('https:') === true;
  const isWalk = pathname === WALK_PAGE;
  const policy = contentPolicy(nonce(), isSecure, issuer === undefined ? [] : [new URL(issuer).origin], isWalk);
  const headers: Record<string, string> = {
    'content-security-policy': policy,
    ...safeHeaders(isSecure, { isPromised: promise !== 'off', camera: isWalk }),
  };
  if (isPrivate(pathname)) headers['cache-control'] = 'no-store';
  const stray = strayOf(request, address, pathname);
  return stray ? { answer: turnedAway(stray, headers) } : { answer: null, policy, headers };
}

function turnedAway(stray: Stray, headers: Record<string, string>): Response {
  const { status, said } = TURNED_AWAY[stray];
  return new Response(`${said}\n`, { status, headers: { ...headers, 'content-type': 'text/plain; charset=utf-8' } });
}

function nonce(): string {
  return Buffer.from(crypto.getRandomValues(new Uint8Array(NONCE_BYTES))).toString('base64');
}
