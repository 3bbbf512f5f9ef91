import 'server-only';
import { lookup } from 'node:dns/promises';
import ipaddr from 'ipaddr.js';
import { ok, type Result, refused } from '#core/result';

/** Where a broker is, looked up. */
export interface Where {
  /** Numeric. */
  host: string;
  port: number;
  /** The name that its certificate must be of. */
  name: string;
  isTls: boolean;
}

/** Kinds of addresses behind which no broker stands: those of the very link, where clouds tell secrets, and of nobody or of many. */
const NO_BROKER = new Set(['linkLocal', 'unspecified', 'broadcast', 'multicast', 'reserved']);

/**
 * Looks up where a broker is. It may be on this machine or in the same house: that is where most are.
 *
 * @param address   `mqtt://host:port` or `mqtts://host:port`
 * @returns         where; or why there is no broker there, as a sentence
 * @throws          what the resolver says
 */
export async function whereIs(address: string): Promise<Result<Where, string>> {
  const { protocol, hostname, port } = new URL(address);
  const isTls = protocol === 'mqtts:';
  const name = hostname.replace(/^\[|\]$/g, '');
  const { address: host } = await lookup(name);
  if (NO_BROKER.has(ipaddr.process(host).range())) return refused('There can be no broker at that address.');
  return ok({ host, port: port === '' ? (isTls ? 8883 : 1883) : Number(port), name, isTls });
}
