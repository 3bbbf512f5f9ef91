import 'server-only';
import type { z } from 'zod';
import { ok, type Result, refused } from '#core/result';
import { findAccount, findPasswordHash, setPassword } from '#data/accounts/accounts';
import { countTry, forgetFailures } from '#data/accounts/tries';
import { inTransaction } from '#data/transaction';
import { changePasswordRequest } from '#shape/accounts/sign-in';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { chosenPassword } from '../sign-in/chosen-password';
import { isPassword } from '../sign-in/password';

export const changePasswordShape = changePasswordRequest;

/**
 * Gives one's own account another password, by the one it has. Every other session ends. Tries are counted as at the sign-in:
 * whoever finds a browser signed in is not to guess at leisure.
 */
export async function changePassword(
  who: Who,
  { old, password }: z.output<typeof changePasswordShape>,
): Promise<Result<true, Refusal>> {
  const account = await findAccount(who.id);
  if (!account) return refused({ why: 'not-found', what: 'account' });
  const pause = await countTry(account.id, account.id);
  if (pause !== null) return refused({ why: 'too-often', waitS: pause === 'never' ? null : pause.waitS });
  if (!(await isPassword(await findPasswordHash(who.id), old)))
    return refused({ why: 'invalid', faults: [{ path: 'old', message: 'This is not the password you have now.' }] });
  await forgetFailures(account.id, account.id);
  const chosen = await chosenPassword(password, [account.name, account.email]);
  if (!chosen.ok) return chosen;
  const { id, session: except = null } = who;
  await inTransaction((tx) => setPassword(tx, { accountId: id, passwordHash: chosen.value, by: id, except }, now()));
  return ok(true);
}
