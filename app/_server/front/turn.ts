import 'server-only';

/** A request as far as it decides what becomes of it. */
export interface Knock {
  method: string;
  /** Name and port it was made to, as the browser sends them. */
  host: string;
  /** What is asked for: path and question. */
  path: string;
}

/** By what this machine may be called. */
export interface Called {
  /** Where people reach Holdfast. */
  own: URL;
  /** Other names and addresses of this machine. */
  others: ReadonlySet<string>;
  /** Whether pages that tell how to trust this machine are shown in the clear. */
  isTrustTold: boolean;
}

/** What becomes of a request: let through to the pages, sent elsewhere, or turned away. */
export type Turn = { turn: 'pass' } | { turn: 'lead'; to: string } | { turn: 'away'; status: number; said: string };

/** What is shown to a browser that does not trust this machine yet: how to, and what that page is made of. */
const IN_THE_CLEAR = /^\/(trust$|trust\?|api\/trust\/|_next\/static\/|icon\.svg$)/;
const READS = new Set(['GET', 'HEAD']);
const FOREIGN = 'Holdfast does not answer to this name. Use the address it was set up with.';
const IN_CLEAR_TEXT = 'This came unencrypted, so nothing was done with it. Use the address that begins with https.';

/**
 * What becomes of a request that came encrypted. Whoever calls the machine by another of its names is led to the one people
 * were told: sign-in is bound to a name.
 */
export function secureTurn({ method, host, path }: Knock, { own, others }: Called): Turn {
  if (host.toLowerCase() === own.host) return { turn: 'pass' };
  if (READS.has(method) && isOther(host, own, others)) return { turn: 'lead', to: own.origin + path };
  return { turn: 'away', status: 421, said: FOREIGN };
}

/** What becomes of a request that came in the clear: never more than how to come back encrypted. */
export function plainTurn({ method, host, path }: Knock, { own, others, isTrustTold }: Called): Turn {
  if (host.toLowerCase() !== own.host && !isOther(host, own, others))
    return { turn: 'away', status: 421, said: FOREIGN };
  if (!READS.has(method)) return { turn: 'away', status: 403, said: IN_CLEAR_TEXT };
  if (isTrustTold && IN_THE_CLEAR.test(path)) return { turn: 'pass' };
  if (isTrustTold && path === '/') return { turn: 'lead', to: '/trust' };
  return { turn: 'lead', to: own.origin + path };
}

function isOther(host: string, own: URL, others: ReadonlySet<string>): boolean {
  const name = host
    .toLowerCase()
    .replace(/:\d+$/, '')
    .replace(/^\[|\]$/g, '');
  return name === own.hostname || others.has(name);
}
