import 'server-only';
import { BlockList, isIPv6 } from 'node:net';
import ipaddr from 'ipaddr.js';

/**
 * Addresses that mean a machine of one's own network and nowhere else: RFC 1918, RFC 1122 (loopback), RFC 3927, RFC 6598,
 * RFC 4193 and RFC 4291 (loopback, link-local).
 */
const PRIVATE_RANGES = [
  '10.0.0.0/8',
  '172.16.0.0/12',
  '192.168.0.0/16',
  '127.0.0.0/8',
  '169.254.0.0/16',
  '100.64.0.0/10',
  '::1/128',
  'fc00::/7',
  'fe80::/10',
] as const;

/**
 * Whether an address lies in one of some ranges.
 *
 * @param ranges   such as `10.0.0.0/8`, or single addresses
 * @throws         when one of them is neither
 */
export function withinRanges(ranges: readonly string[]): (address: string) => boolean {
  const list = new BlockList();
  for (const range of ranges) {
    const [base, bits] = range.includes('/') ? ipaddr.parseCIDR(range) : [ipaddr.parse(range), undefined];
    const family = base.kind();
    if (bits === undefined) list.addAddress(base.toString(), family);
    else list.addSubnet(base.toString(), bits, family);
  }
  return (address) => list.check(address, isIPv6(address) ? 'ipv6' : 'ipv4');
}

/** Whether an address means a machine of one's own network. */
export const isPrivateAddress = withinRanges(PRIVATE_RANGES);

/** The private ranges as address and mask, byte by byte: how a certificate says them (RFC 5280, 4.2.1.10). */
export function privateRangeBytes(): number[][] {
  return PRIVATE_RANGES.map((range) => {
    const [base, bits] = ipaddr.parseCIDR(range);
    const address = base.toByteArray();
    const mask = address.map((_, place) => 256 - 2 ** (8 - Math.min(8, Math.max(0, bits - 8 * place))));
    return [...address, ...mask];
  });
}
