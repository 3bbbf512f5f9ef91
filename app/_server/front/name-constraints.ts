import 'server-only';
import { Extension } from '@peculiar/x509';
import { privateRangeBytes } from './private-ranges';

/** Of an extension that limits for whom an authority may speak (RFC 5280, 4.2.1.10). */
const NAME_CONSTRAINTS = '2.5.29.30';
/** Tags in DER (X.690): a sequence, what is permitted, a name, an address. */
const SEQUENCE = 0x30;
const PERMITTED = 0xa0;
const DNS_NAME = 0x82;
const IP_ADDRESS = 0x87;

/**
 * Limits an authority to some names and to addresses of private networks: whoever stole its key could pretend to be nobody
 * else. Whoever does not understand the limit has to refuse the certificate.
 *
 * @param names   host names; what lies below each is permitted with it
 */
export function nameConstraints(names: readonly string[]): Extension {
  const bases = [
    ...names.map((name) => told(DNS_NAME, [...Buffer.from(name, 'ascii')])),
    ...privateRangeBytes().map((range) => told(IP_ADDRESS, range)),
  ];
  const permitted = bases.flatMap((base) => told(SEQUENCE, base));
  return new Extension(NAME_CONSTRAINTS, true, Uint8Array.from(told(SEQUENCE, told(PERMITTED, permitted))));
}

/** A tag, how many bytes follow, and the bytes. */
function told(tag: number, bytes: readonly number[]): number[] {
  const count = bytes.length;
  if (count < 0x80) return [tag, count, ...bytes];
  if (count < 0x100) return [tag, 0x81, count, ...bytes];
  return [tag, 0x82, count >> 8, count & 0xff, ...bytes];
}
