import 'server-only';
import { X509Certificate } from 'node:crypto';
import { join } from 'node:path';
import { env, machineEnv } from '../env';
import { readKept } from '../front/kept-file';
import { authorityFile } from '../front/authority-file';

/**
 * The certificate of this machine's own authority, which everybody may have; never its key, which no page reads.
 *
 * @returns   null where people come by no such authority
 */
export function ownAuthority(): X509Certificate | null {
  if (env().HOLDFAST_TLS !== 'local') return null;
  const kept = readKept(authorityFile(join(machineEnv().HOLDFAST_DATA, 'tls')));
  return kept === undefined ? null : new X509Certificate(kept);
}

/** What an authority is called in the list of a phone. */
export function titleOf({ subject }: X509Certificate): string {
  // Node writes a comma of the name as RFC 4514 does, with a stroke before it.
  return subject.replace(/^CN=/, '').replace(/\\(.)/g, '$1');
}
