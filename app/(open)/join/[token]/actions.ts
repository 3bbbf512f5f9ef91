'use server';

import type { Answer } from '#server/gate/act';
import { actOpenly } from '#server/gate/open';
import { choosePassword, newPasswordShape } from '#server/sign-in/new-password';
import { letIn } from '../../set-cookies';

const join = actOpenly(newPasswordShape, choosePassword('join'));

/** Gives an account its first password and signs it in. */
export async function joinAction(_before: Answer<never> | null, form: FormData): Promise<Answer<never>> {
  return await letIn(await join(null, form));
}
