'use server';

import type { Answer } from '#server/gate/act';
import { actOpenly } from '#server/gate/open';
import { signIn, signInShape } from '#server/sign-in/sign-in';
import { letIn } from '../set-cookies';

const byPassword = actOpenly(signInShape, signIn);

/** Signs in by address and password. */
export async function signInAction(_before: Answer<never> | null, form: FormData): Promise<Answer<never>> {
  return await letIn(await byPassword(null, form));
}
