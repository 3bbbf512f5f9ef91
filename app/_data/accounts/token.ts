import 'server-only';
import { createHash, randomBytes } from 'node:crypto';

/** Bytes of chance in a token: 256 bits, so that a plain hash of it may be kept (OWASP ASVS 5.0, 6.5.2). */
const TOKEN_BYTES = 32;

/** @returns   a new token, 43 characters that may stand in a cookie and in an address */
export function newToken(): string {
  return randomBytes(TOKEN_BYTES).toString('base64url');
}

/**
 * What is kept of a token: whoever reads the database cannot use it.
 *
 * @returns   its SHA-256, 32 bytes
 */
export function hashOf(token: string): Uint8Array<ArrayBuffer> {
  return new Uint8Array(createHash('sha256').update(token, 'utf8').digest());
}
