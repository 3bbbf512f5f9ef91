import 'server-only';
import { env } from '../env';

/** Names by which a machine calls itself. */
const LOOPBACK = new Set(['localhost', '127.0.0.1', '[::1]']);

/** Where a browser believes it is. */
export interface Origin {
  /** Such as `http://localhost:3200`, without a path. */
  url: string;
  /** Name and port, as the browser sends them. */
  host: string;
  /** Name alone. */
  name: string;
  isSecure: boolean;
  /** Whether it is one of the names by which a machine calls itself. */
  isLoopback: boolean;
}

/**
 * The origin a request was made to, if it is one of ours: this machine by its own name, or HOLDFAST_ADDRESS. A page
 * elsewhere that gives its own name this machine's address is not let in by it.
 *
 * @param headers   of the request
 * @param address   where Holdfast is reached from other machines, if anywhere
 */
export function originOf(headers: Pick<Headers, 'get'>, address = env().HOLDFAST_ADDRESS): Origin | null {
  const own = originNamed(headers.get('host') ?? '', address);
  // Whoever hands a request on says by which name it came: a proxy, and Next itself when it renders the page that a form
  // leads to. A page elsewhere can say so as well, hence the name that the request is made to has to be ours already.
  const handedOn = headers.get('x-forwarded-host');
  return own && handedOn !== null ? originNamed(handedOn, address) : own;
}

function originNamed(given: string, address: string | undefined): Origin | null {
  const host = given.toLowerCase();
  const ours = address === undefined ? null : new URL(address);
  if (ours && host === ours.host && !isLoopback(ours.hostname)) {
    const { origin, hostname, protocol } = ours;
    return { url: origin, host, name: hostname, isSecure: protocol === 'https:', isLoopback: false };
  }
  const name = host.replace(/:\d+$/, '');
  if (!isLoopback(name)) return null;
  return { url: `http://${host}`, host, name, isSecure: false, isLoopback: true };
}

function isLoopback(name: string): boolean {
  return LOOPBACK.has(name);
}
