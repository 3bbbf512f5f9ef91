'use server';

import type { Answer } from '#server/gate/act';
import { actOpenly } from '#server/gate/open';
import { choosePassword, newPasswordShape } from '#server/sign-in/new-password';
import { letIn } from '../../set-cookies';

const reset = actOpenly(newPasswordShape, choosePassword('reset'));

/** Gives an account a new password and signs it in. */
export async function resetAction(_before: Answer<never> | null, form: FormData): Promise<Answer<never>> {
  return await letIn(await reset(null, form));
}
