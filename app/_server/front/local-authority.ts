import 'server-only';
import { X509Certificate } from 'node:crypto';
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import { logInfo } from '../log';
import { authorityFile } from './authority-file';
import { issueServer, makeAuthority, type Pair } from './issue';
import { keepFile, readKept } from './kept-file';
import type { MachineNames } from './machine-names';

const DAY_MS = 86_400_000;
/** Days before its end from which on a certificate is renewed. */
const RENEW_DAYS = 30;

const KeptAuthority = z.object({ certificate: z.string(), key: z.string(), names: z.array(z.string()) });
type KeptAuthority = z.infer<typeof KeptAuthority>;
const KeptServer = z.object({ certificate: z.string(), key: z.string() });

/**
 * The certificate this machine shows, and its key: the one that is kept while it holds for the names of now and for a month
 * to come, else a new one. The authority is made when there is none, or when its time is over.
 *
 * @param folder   where both are kept, closed to others
 * @param names    by which this machine may be called
 * @returns        the pair, and the names that the authority may not speak for
 */
export async function localPair(
  folder: string,
  names: MachineNames,
  at: Date,
): Promise<{ pair: Pair; beyond: string[] }> {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const authority = keptAuthority(folder, at) ?? (await newAuthority(folder, names, at));
  const may = { ...names, names: names.names.filter((name) => maySpeakFor(authority, name)) };
  const beyond = names.names.filter((name) => !may.names.includes(name));
  const path = join(folder, 'server.json');
  const kept = KeptServer.safeParse(parsed(readKept(path)));
  if (kept.success && isGood(kept.data, authority, may, at)) return { pair: kept.data, beyond };
  const pair = await issueServer(authority, may, at);
  keepFile(path, JSON.stringify(pair), 0o600);
  logInfo('certificate of this machine was made', { names: [...may.names, ...may.addresses].join(' ') });
  return { pair, beyond };
}

function keptAuthority(folder: string, at: Date): KeptAuthority | undefined {
  const kept = KeptAuthority.safeParse(parsed(readKept(join(folder, 'authority.json'))));
  if (!kept.success || ends(kept.data.certificate) <= at) return undefined;
  // The open file may be missing when a start was broken off between the two.
  if (readKept(authorityFile(folder)) !== kept.data.certificate)
    keepFile(authorityFile(folder), kept.data.certificate, 0o644);
  return kept.data;
}

async function newAuthority(folder: string, { names }: MachineNames, at: Date): Promise<KeptAuthority> {
  const own = names.find((name) => name.endsWith('.local')) ?? 'this machine';
  const title = `Holdfast on ${own.replace(/\.local$/, '')}, ${at.toISOString().slice(0, 10)}`;
  const authority = { ...(await makeAuthority(names, title, at)), names };
  keepFile(join(folder, 'authority.json'), JSON.stringify(authority), 0o600);
  keepFile(authorityFile(folder), authority.certificate, 0o644);
  logInfo('authority of this machine was made', { title });
  return authority;
}

function maySpeakFor({ names }: KeptAuthority, name: string): boolean {
  return names.some((may) => name === may || name.endsWith(`.${may}`));
}

function isGood({ certificate }: Pair, authority: Pair, names: MachineNames, at: Date): boolean {
  const read = new X509Certificate(certificate);
  const said = (read.subjectAltName ?? '').split(', ').length;
  const holdsFor =
    names.names.every((name) => read.checkHost(name, { subject: 'never' }) !== undefined) &&
    names.addresses.every((address) => read.checkIP(address) !== undefined);
  return (
    read.verify(new X509Certificate(authority.certificate).publicKey) &&
    new Date(read.validFrom) <= at &&
    ends(certificate).getTime() - at.getTime() > RENEW_DAYS * DAY_MS &&
    said === names.names.length + names.addresses.length &&
    holdsFor
  );
}

function ends(certificate: string): Date {
  return new Date(new X509Certificate(certificate).validTo);
}

/** A file that is damaged counts as none. */
function parsed(text: string | undefined): unknown {
  try {
    return JSON.parse(text ?? 'null');
  } catch {
    return null;
  }
}
