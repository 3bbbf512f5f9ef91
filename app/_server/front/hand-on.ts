import 'server-only';
import type { IncomingHttpHeaders, OutgoingHttpHeaders } from 'node:http';
import type { Socket } from 'node:net';

/** Headers that hold for one connection alone (RFC 9110, 7.6.1). */
const OF_A_CONNECTION = [
  'connection',
  'keep-alive',
  'proxy-connection',
  'te',
  'trailer',
  'transfer-encoding',
  'upgrade',
];
/** Where others say for whom they speak: taken from nobody but a proxy that was named. */
const SAID_BY_OTHERS = /^(forwarded|x-forwarded-.*|x-real-ip|x-client-ip|true-client-ip|x-holdfast-.*|expect)$/;

/** Who asks, and by which name. */
export interface Asker {
  /** Address of the machine that asks. */
  address: string;
  /** Name and port it asks by. */
  host: string;
}

/**
 * Who asks: whoever holds the connection, or whom a named proxy says it speaks for, which it adds last.
 *
 * @param isProxy   whether an address is that of a proxy that whoever runs the machine named
 */
export function askerOf(
  { remoteAddress = '' }: Pick<Socket, 'remoteAddress'>,
  headers: IncomingHttpHeaders,
  isProxy: (address: string) => boolean,
): Asker {
  const peer = remoteAddress.replace(/^::ffff:(?=\d+\.)/, '');
  const host = headers.host ?? '';
  if (peer === '' || !isProxy(peer)) return { address: peer, host };
  return {
    address: lastOf(headers['x-forwarded-for']) ?? peer,
    host: lastOf(headers['x-forwarded-host']) ?? host,
  };
}

function lastOf(said: string | string[] | undefined): string | undefined {
  return [said].flat().join(',').split(',').at(-1)?.trim() || undefined;
}

/**
 * The headers a request is handed on with: as they came, but those of its connection and what it says of others.
 *
 * @param host     by which the pages know themselves
 * @param scheme   by which the request came
 */
export function headersInside(
  headers: IncomingHttpHeaders,
  { address }: Pick<Asker, 'address'>,
  host: string,
  scheme: 'http' | 'https',
): OutgoingHttpHeaders {
  const kept = Object.entries(headers).filter(([name]) => !isOfConnection(name, headers) && !SAID_BY_OTHERS.test(name));
  return {
    ...Object.fromEntries(kept),
    host,
    'x-forwarded-for': address,
    'x-forwarded-host': host,
    'x-forwarded-proto': scheme,
  };
}

/** The headers of an answer, name after value, without those of the connection it came by. */
export function headersOutside(raw: readonly string[], leaveOut: ReadonlySet<string> = new Set()): string[] {
  const kept: string[] = [];
  for (let at = 0; at + 1 < raw.length; at += 2) {
    const [name = '', value = ''] = raw.slice(at, at + 2);
    const low = name.toLowerCase();
    if (!OF_A_CONNECTION.includes(low) && !leaveOut.has(low)) kept.push(name, value);
  }
  return kept;
}

function isOfConnection(name: string, { connection = '' }: IncomingHttpHeaders): boolean {
  const named = connection
    .toLowerCase()
    .split(',')
    .map((one) => one.trim());
  return OF_A_CONNECTION.includes(name) || named.includes(name);
}
