import 'server-only';
import type { z } from 'zod';
import { ok, type Result, refused } from '#core/result';
import { emailKey, findAccountByEmail, findPasswordHash, noteFailure, rehashPassword } from '#data/accounts/accounts';
import { countTry, forgetFailures } from '#data/accounts/tries';
import { signInRequest } from '#shape/accounts/sign-in';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import type { Visit } from '../gate/visit';
import { type Entered, enter } from './enter';
import { hashPassword, isOutdated, isPassword } from './password';

export const signInShape = signInRequest;

/**
 * Signs in by address and password. The answer, and how long it takes, are the same whether there is such an account or not.
 */
export async function signIn(
  visit: Visit,
  { email, password, to }: z.output<typeof signInShape>,
): Promise<Result<Entered, Refusal>> {
  const key = emailKey(email);
  const pause = await countTry(key, visit.address);
  if (pause !== null) return refused({ why: 'too-often', waitS: pause === 'never' ? null : pause.waitS });
  const account = await findAccountByEmail(key);
  const hashed = account && (await findPasswordHash(account.id));
  if (!(await isPassword(hashed, password)) || !account || hashed === null) {
    await noteFailure({ accountId: account?.id ?? null, way: 'password' }, now());
    return refused({ why: 'wrong-sign-in' });
  }
  await forgetFailures(key, visit.address);
  if (isOutdated(hashed)) await rehashPassword(account.id, hashed, await hashPassword(password));
  return ok(await enter(visit, { accountId: account.id, way: 'password', to }));
}
