import 'server-only';
import { originOf } from '../gate/origin';

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

/** Methods that change nothing. */
const SAFE = new Set(['GET', 'HEAD', 'OPTIONS']);
/** Where devices send readings: no cookie is looked at there. */
export const FOR_DEVICES = '/api/readings';

/**
 * Whether a request is meant for this Holdfast, and comes from one of its own pages when it would change something. A name
 * that somebody else points at this machine is not ours, and neither is a page that sends a form here. A browser that
 * sends no origin says at least whether the page was ours; what says neither is no browser with a page of ours.
 *
 * @param sent      method and headers
 * @param address   where Holdfast is reached from other machines, if anywhere
 * @param path      of the address it was made to
 * @returns         why it is turned away; null when it may go on
 */
export function strayOf({ method, headers }: Sent, address?: string, path = '/'): Stray | null {
  const own = originOf(headers, address);
  if (!own) return 'foreign-name';
  if (SAFE.has(method.toUpperCase())) return null;
  // What a device sends is let in by its token and by nothing that a browser adds of itself. A page elsewhere that would send
  // one has to ask first, and is not answered.
  if (path === FOR_DEVICES) return null;
  const page = headers.get('origin');
  const isOwn = page === null ? headers.get('sec-fetch-site') === 'same-origin' : page === own.url;
  return isOwn ? null : 'foreign-page';
}
