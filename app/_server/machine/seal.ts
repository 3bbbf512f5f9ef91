import 'server-only';
import { createCipheriv, createDecipheriv, hkdfSync, randomBytes } from 'node:crypto';
import { ok, type Result, refused } from '#core/result';
import { machineEnv } from '../env';

const CIPHER = 'aes-256-gcm';
const KEY_BYTES = 32;
/** Of the nonce and of the tag (NIST SP 800-38D). */
const NONCE_BYTES = 12;
const TAG_BYTES = 16;

/** Why a secret of somebody else's can be neither kept nor read. */
export type SealFault = 'no-secret' | 'other-secret';

/**
 * Seals a secret that Holdfast has to show to somebody else, such as the password of a broker: neither the database nor a backup
 * can tell it without `HOLDFAST_SECRET`.
 *
 * @param what   what it is for: what was sealed for one thing is not read for another
 */
export function seal(text: string, what: string): Result<Uint8Array<ArrayBuffer>, SealFault> {
  const key = keyFor(what);
  if (!key) return refused('no-secret');
  const nonce = randomBytes(NONCE_BYTES);
  const cipher = createCipheriv(CIPHER, key, nonce);
  const sealed = Buffer.concat([cipher.update(text, 'utf8'), cipher.final()]);
  return ok(Uint8Array.from(Buffer.concat([nonce, cipher.getAuthTag(), sealed])));
}

/** Reads what was sealed for the same thing; `other-secret` when it was sealed by another machine, or is damaged. */
export function unseal(sealed: Uint8Array, what: string): Result<string, SealFault> {
  const key = keyFor(what);
  if (!key) return refused('no-secret');
  const bytes = Buffer.from(sealed);
  try {
    const decipher = createDecipheriv(CIPHER, key, bytes.subarray(0, NONCE_BYTES));
    decipher.setAuthTag(bytes.subarray(NONCE_BYTES, NONCE_BYTES + TAG_BYTES));
    const text = Buffer.concat([decipher.update(bytes.subarray(NONCE_BYTES + TAG_BYTES)), decipher.final()]);
    return ok(text.toString('utf8'));
  } catch {
    return refused('other-secret');
  }
}

function keyFor(what: string): Buffer | null {
  const { HOLDFAST_SECRET } = machineEnv();
  if (HOLDFAST_SECRET === undefined) return null;
  return Buffer.from(hkdfSync('sha256', HOLDFAST_SECRET, '', `holdfast ${what}`, KEY_BYTES));
}
