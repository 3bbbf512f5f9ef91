import 'server-only';
import { randomBytes } from 'node:crypto';
import { hash, verify } from '@node-rs/argon2';
import { asTyped } from './password-rules';

/** argon2id, which the library takes when nothing is said, with the least that OWASP names (Password Storage: 19 MiB, 2, 1). */
const PARAMETERS = { memoryCost: 19_456, timeCost: 2, parallelism: 1 } as const;
/** How a hash of these parameters begins (PHC string format). */
const PRESENT = `$argon2id$v=19$m=${PARAMETERS.memoryCost},t=${PARAMETERS.timeCost},p=${PARAMETERS.parallelism}$`;

const kept: { nobodys?: Promise<string> } = {};

/** What is kept of a password: its parameters, its salt and its hash in one text. */
export async function hashPassword(password: string): Promise<string> {
  return await hash(asTyped(password), PARAMETERS);
}

/**
 * Whether this is the password. It takes as long when there is none to compare with, so that nobody learns from the time who
 * has an account.
 *
 * @param hashed   what is kept of the right one; null when there is none
 */
export async function isPassword(hashed: string | null, password: string): Promise<boolean> {
  kept.nobodys ??= hashPassword(randomBytes(32).toString('base64url'));
  const isRight = await verify(hashed ?? (await kept.nobodys), asTyped(password));
  return isRight && hashed !== null;
}

/** Whether a hash was made with other parameters than those of today. */
export function isOutdated(hashed: string): boolean {
  return !hashed.startsWith(PRESENT);
}
