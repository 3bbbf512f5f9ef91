import 'server-only';
import { type LookupAddress, promises as dns } from 'node:dns';
import { isIP } from 'node:net';
import ipaddr from 'ipaddr.js';
import { env } from '../env';

/** An address that may be called, and what its name was found to be: it is connected to nothing else. */
export interface Outbound {
  url: URL;
  addresses: LookupAddress[];
}

/** Why an address is not called, in words for whoever chose it. */
export class NotCalled extends Error {}

/**
 * Looks up an address that somebody chose on a screen, so that it cannot be turned against this machine or its network: https
 * alone, and every address of the name has to be one of the public internet. Hosts that whoever runs the machine named in
 * HOLDFAST_CALL_HOSTS are called wherever they are, and by http as well.
 *
 * @throws NotCalled   when it is not to be called; what the resolver says when there is no such name
 */
export async function outbound(address: string): Promise<Outbound> {
  const url = new URL(address);
  const isNamed = (env().HOLDFAST_CALL_HOSTS ?? []).some((host) => host === url.host || host === url.hostname);
  if (url.protocol !== 'https:' && !(isNamed && url.protocol === 'http:'))
    throw new NotCalled('The address is not https.');
  if (url.username !== '' || url.password !== '') throw new NotCalled('The address holds a name or a password.');
  const bare = url.hostname.replace(/^\[|\]$/g, '');
  const family = isIP(bare);
  const addresses = family > 0 ? [{ address: bare, family }] : await dns.lookup(bare, { all: true });
  if (!isNamed && !addresses.every(({ address: one }) => isPublic(one)))
    throw new NotCalled(`${url.hostname} is in a private network or on this machine.`);
  return { url, addresses };
}

/** Whether an IP address belongs to the public internet: not loopback, private, link-local, multicast or a way round them. */
export function isPublic(address: string): boolean {
  // An IPv4 address in the clothes of IPv6 counts as what it is.
  return ipaddr.isValid(address) && ipaddr.process(address).range() === 'unicast';
}
