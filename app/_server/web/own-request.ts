import 'server-only';

/** What of a request tells for whom it is meant and where it comes from. */
export interface Sent {
  method: string;
  headers: Pick<Headers, 'get'>;
}

/**
 * Why a request is turned away: it calls this machine by a name that is not ours, or it would change something and comes
 * from a page that is not ours.
 */
export type Stray = 'foreign-name' | 'foreign-page';

/** Names by which a machine calls itself. */
const LOOPBACK = new Set(['localhost', '127.0.0.1', '[::1]']);
/** Methods that change nothing. */
const SAFE = new Set(['GET', 'HEAD', 'OPTIONS']);

/**
 * Whether a request is meant for this Holdfast, and comes from one of its own pages when it would change something. A name
 * that somebody else points at this machine is not ours, and neither is a page that sends a form here.
 *
 * @param sent      method and headers
 * @param address   where people find Holdfast; null when it serves its own machine alone
 * @returns         why it is turned away; null when it may go on
 */
export function strayOf({ method, headers }: Sent, address: URL | null): Stray | null {
  const host = (headers.get('host') ?? '').toLowerCase();
  if (!isOwnName(host, address)) return 'foreign-name';
  if (SAFE.has(method.toUpperCase())) return null;
  const origin = headers.get('origin');
  const isOwn = origin === null ? headers.get('sec-fetch-site') === 'same-origin' : isOwnPage(origin, host, address);
  return isOwn ? null : 'foreign-page';
}

/** @param host the Host header in lower case, with its port */
function isOwnName(host: string, address: URL | null): boolean {
  return LOOPBACK.has(nameOf(host)) || (address !== null && host === address.host);
}

/** A page of the address that people are told, or of the loopback name the request itself was sent to. */
function isOwnPage(origin: string, host: string, address: URL | null): boolean {
  if (address !== null && origin === address.origin) return true;
  return LOOPBACK.has(nameOf(host)) && origin === `http://${host}`;
}

function nameOf(host: string): string {
  return host.replace(/:\d+$/, '');
}
