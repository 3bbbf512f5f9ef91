import 'server-only';
import type { z } from 'zod';
import { ok, type Result, refused } from '#core/result';
import { emailKey, findAccountByEmail } from '#data/accounts/accounts';
import { mayOnceMore } from '#data/accounts/tries';
import { inTransaction } from '#data/transaction';
import { resetRequest } from '#shape/accounts/sign-in';
import { resetByMail } from '../accounts/link-out';
import type { Refusal } from '../gate/refusal';
import type { Visit } from '../gate/visit';

export const askResetShape = resetRequest;

const HOUR_S = 3600;
/** Messages an hour to one address, and asked for from one machine. Common practice, no source. */
const TO_ONE = 3;
const FROM_ONE = 20;

/**
 * Asks for a link to a new password by mail. The answer is the same whether there is such an account or not; the worker finds
 * out, and makes the link itself, so that no token waits among the jobs.
 */
export async function askReset(
  visit: Visit,
  { email }: z.output<typeof askResetShape>,
): Promise<Result<true, Refusal>> {
  const key = emailKey(email);
  if (!(await mayOnceMore('mail-from', visit.address, FROM_ONE, HOUR_S)))
    return refused({ why: 'too-often', waitS: HOUR_S });
  if (!(await mayOnceMore('mail-to', key, TO_ONE, HOUR_S))) return ok(true);
  const account = await findAccountByEmail(key);
  await inTransaction((tx) => resetByMail(tx, account?.id ?? null));
  return ok(true);
}
