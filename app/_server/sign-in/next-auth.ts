import 'server-only';
import { randomBytes } from 'node:crypto';
import NextAuth, { type NextAuthOptions } from 'next-auth';
import { env, letOriginBeGiven } from '../env';
import type { Origin } from '../gate/origin';
import { logError } from '../log';

/** A request as next-auth sees it. */
export interface AuthRequest {
  /** What follows `/api/auth/`, in parts. */
  path: string[];
  method: string;
  query: Record<string, string>;
  body: Record<string, string>;
  cookies: Record<string, string>;
  origin: Origin;
}

/** What next-auth answers. */
export interface AuthResponse {
  status: number;
  headers: Headers;
  /** JSON, or the text of a page. */
  body: unknown;
}

/** next-auth as it is called with plain values; its own types name those of a web server. */
type PlainNextAuth = (request: object, response: object, options: NextAuthOptions) => Promise<void>;

letOriginBeGiven();

const kept: typeof globalThis & { holdfastSecret?: string } = globalThis;

/** Good for as long as the process lives where none was given: whoever is at the issuer meanwhile begins again. */
function secret(): string {
  kept.holdfastSecret ??= env().HOLDFAST_SECRET ?? randomBytes(32).toString('base64url');
  return kept.holdfastSecret;
}

/**
 * Asks next-auth: this file alone knows it. It is called as its own documentation has it for a server without Next's app
 * router, with plain values, so that who asks and from where has been settled here before.
 *
 * @param options   what is signed in by, and what becomes of it
 */
export async function askNextAuth(request: AuthRequest, options: NextAuthOptions): Promise<AuthResponse> {
  const { path, query, origin } = request;
  const answer: AuthResponse = { status: 200, headers: new Headers(), body: undefined };
  const asked = {
    method: request.method,
    query: { ...query, nextauth: path },
    body: request.body,
    cookies: request.cookies,
    headers: { 'x-forwarded-host': origin.host, 'x-forwarded-proto': origin.isSecure ? 'https' : 'http' },
  };
  await (NextAuth as PlainNextAuth)(asked, collect(answer), {
    useSecureCookies: origin.isSecure,
    ...options,
    secret: secret(),
    logger: {
      error: (code, detail) => logError(`next-auth ${code}`, wordOf('error' in detail ? detail.error : detail)),
      warn: () => undefined,
      debug: () => undefined,
    },
  });
  return answer;
}

/** What an error says, without the marks of a sign-in under way that it may quote. */
function wordOf(error: unknown): string {
  const said = error instanceof Error ? `${error.name}: ${error.message}` : 'no word';
  return said.replaceAll(/[\w-]{24,}/g, '…');
}

/** What a handler of Next's may do with an answer, as far as next-auth does it. */
function collect(answer: AuthResponse) {
  const cookies: string[] = [];
  const response = {
    status(code: number) {
      answer.status = code;
      return response;
    },
    getHeader: (name: string) => (name === 'Set-Cookie' ? cookies : answer.headers.get(name)),
    setHeader(name: string, value: string | string[]) {
      if (Array.isArray(value)) {
        answer.headers.delete(name);
        for (const one of value) answer.headers.append(name, one);
      } else answer.headers.set(name, value);
      return response;
    },
    json(value: unknown) {
      answer.body = value;
    },
    send(value: unknown) {
      answer.body = value;
    },
    end: () => undefined,
  };
  return response;
}
