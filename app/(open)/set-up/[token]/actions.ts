'use server';

import type { Answer } from '#server/gate/act';
import { actOpenly } from '#server/gate/open';
import { setUp, setUpShape } from '#server/sign-in/set-up';
import { letIn } from '../../set-cookies';

const firstAccount = actOpenly(setUpShape, setUp);

/** Makes the first account and signs it in. */
export async function setUpAction(_before: Answer<never> | null, form: FormData): Promise<Answer<never>> {
  return await letIn(await firstAccount(null, form));
}
