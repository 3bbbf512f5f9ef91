import 'server-only';
import { readFileSync } from 'node:fs';
import { createSecureContext } from 'node:tls';
import type { Pair } from './issue';

/**
 * The certificate that whoever runs the machine gave, with what leads to its authority, and its key.
 *
 * @param files   where they lie, as PEM
 * @throws        when one cannot be read, or they do not belong together
 */
export function givenPair({ certificate, key }: Pair): Pair {
  const pair = { certificate: readFileSync(certificate, 'utf8'), key: readFileSync(key, 'utf8') };
  // Says here and not at the first visitor that the key is another one's.
  createSecureContext({ cert: pair.certificate, key: pair.key });
  return pair;
}
