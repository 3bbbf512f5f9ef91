import 'server-only';
import 'reflect-metadata';
import { createPrivateKey, randomBytes, webcrypto } from 'node:crypto';
import {
  AuthorityKeyIdentifierExtension,
  BasicConstraintsExtension,
  ExtendedKeyUsage,
  ExtendedKeyUsageExtension,
  type JsonGeneralName,
  KeyUsageFlags,
  KeyUsagesExtension,
  PemConverter,
  SubjectAlternativeNameExtension,
  SubjectKeyIdentifierExtension,
  X509Certificate,
  X509CertificateGenerator,
} from '@peculiar/x509';
import type { MachineNames } from './machine-names';
import { nameConstraints } from './name-constraints';

/** A certificate with its key, both as PEM. */
export interface Pair {
  certificate: string;
  key: string;
}

const ALGORITHM = { name: 'ECDSA', namedCurve: 'P-256', hash: 'SHA-256' };
const DAY_MS = 86_400_000;
/** Ten years: each change of it has to be trusted anew, phone by phone. */
const AUTHORITY_DAYS = 3652;
/** Well under the 397 days that browsers bear with at most; it is renewed by itself. */
const SERVER_DAYS = 90;
/** For clocks of phones that are behind. */
const BEFORE_MS = 3_600_000;

/**
 * An authority of this machine's own, limited to its names and to private addresses, and to signing servers alone.
 *
 * @param names   host names it may ever speak for
 * @param title   what it is called in the list of a phone
 */
export async function makeAuthority(names: readonly string[], title: string, at: Date): Promise<Pair> {
  const keys = await webcrypto.subtle.generateKey(ALGORITHM, true, ['sign', 'verify']);
  const certificate = await X509CertificateGenerator.createSelfSigned({
    serialNumber: serialNumber(),
    name: [{ CN: [title] }],
    ...lasting(at, AUTHORITY_DAYS),
    signingAlgorithm: ALGORITHM,
    keys,
    extensions: [
      new BasicConstraintsExtension(true, 0, true),
      new KeyUsagesExtension(KeyUsageFlags.keyCertSign | KeyUsageFlags.cRLSign, true),
      new ExtendedKeyUsageExtension([ExtendedKeyUsage.serverAuth]),
      await SubjectKeyIdentifierExtension.create(keys.publicKey),
      nameConstraints(names),
    ],
  });
  return { certificate: certificate.toString('pem'), key: await written(keys.privateKey) };
}

/**
 * A certificate of this machine with a key of its own, signed by its authority; never beyond the end of that.
 *
 * @param names   for which it holds; all of them names that the authority may speak for
 */
export async function issueServer(authority: Pair, names: MachineNames, at: Date): Promise<Pair> {
  const root = new X509Certificate(authority.certificate);
  const keys = await webcrypto.subtle.generateKey(ALGORITHM, true, ['sign', 'verify']);
  const { notBefore, notAfter } = lasting(at, SERVER_DAYS);
  const certificate = await X509CertificateGenerator.create({
    serialNumber: serialNumber(),
    subject: [{ CN: ['Holdfast'] }],
    issuer: root.subject,
    notBefore,
    notAfter: new Date(Math.min(notAfter.getTime(), root.notAfter.getTime())),
    signingAlgorithm: ALGORITHM,
    publicKey: keys.publicKey,
    signingKey: await readKey(authority.key),
    extensions: [
      new BasicConstraintsExtension(false, undefined, true),
      new KeyUsagesExtension(KeyUsageFlags.digitalSignature, true),
      new ExtendedKeyUsageExtension([ExtendedKeyUsage.serverAuth]),
      new SubjectAlternativeNameExtension(alternatives(names)),
      await SubjectKeyIdentifierExtension.create(keys.publicKey),
      await AuthorityKeyIdentifierExtension.create(root.publicKey),
    ],
  });
  return { certificate: certificate.toString('pem'), key: await written(keys.privateKey) };
}

function alternatives({ names, addresses }: MachineNames): JsonGeneralName[] {
  return [
    ...names.map((value) => ({ type: 'dns' as const, value })),
    ...addresses.map((value) => ({ type: 'ip' as const, value })),
  ];
}

/** To the second: certificates know nothing finer. */
function lasting(at: Date, days: number): { notBefore: Date; notAfter: Date } {
  const second = Math.floor(at.getTime() / 1000) * 1000;
  return { notBefore: new Date(second - BEFORE_MS), notAfter: new Date(second + days * DAY_MS) };
}

/** 127 bits, never negative and never with a leading nought (RFC 5280, 4.1.2.2). */
function serialNumber(): string {
  const bytes = randomBytes(16);
  bytes[0] = ((bytes[0] ?? 0) & 0x3f) | 0x40;
  return bytes.toString('hex');
}

async function written(key: webcrypto.CryptoKey): Promise<string> {
  return PemConverter.encode(await webcrypto.subtle.exportKey('pkcs8', key), 'PRIVATE KEY');
}

async function readKey(pem: string): Promise<webcrypto.CryptoKey> {
  const bytes = createPrivateKey(pem).export({ format: 'der', type: 'pkcs8' });
  return await webcrypto.subtle.importKey('pkcs8', bytes, ALGORITHM, false, ['sign']);
}
