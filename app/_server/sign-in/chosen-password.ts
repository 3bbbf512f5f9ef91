import 'server-only';
import { ok, type Result, refused } from '#core/result';
import type { Refusal } from '../gate/refusal';
import { hashPassword } from './password';
import { passwordFault } from './password-rules';

/**
 * A password that somebody chose, as it is kept.
 *
 * @param about   name and address of the person, as far as they are known
 * @returns       its hash, or what is wrong with the password
 */
export async function chosenPassword(
  password: string,
  about: readonly (string | null)[],
): Promise<Result<string, Refusal>> {
  const message = passwordFault(
    password,
    about.filter((text) => text !== null),
  );
  if (message !== null) return refused({ why: 'invalid', faults: [{ path: 'password', message }] });
  return ok(await hashPassword(password));
}
