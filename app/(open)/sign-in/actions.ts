'use server';

import { redirect } from 'next/navigation';
import type { Answer } from '#server/gate/act';
import { actOpenly } from '#server/gate/open';
import { toOutside, toOutsideShape } from '#server/sign-in/outside';
import { signIn, signInShape } from '#server/sign-in/sign-in';
import { askPasskey, askPasskeyShape, passkeySignInShape, signInByPasskey } from '#server/sign-in/sign-in-by-passkey';
import { letIn, setCookies } from '../set-cookies';

const byPassword = actOpenly(signInShape, signIn);
const byPasskey = actOpenly(passkeySignInShape, signInByPasskey);
const byIssuer = actOpenly(toOutsideShape, toOutside);

/** Signs in by address and password. */
export async function signInAction(_before: Answer<never> | null, form: FormData): Promise<Answer<never>> {
  return await letIn(await byPassword(null, form));
}

/** Asks the browser for a passkey. */
export const askPasskeyAction = actOpenly(askPasskeyShape, askPasskey);

/** Signs in by a passkey. */
export async function passkeyAction(_before: Answer<never> | null, form: FormData): Promise<Answer<never>> {
  return await letIn(await byPasskey(null, form));
}

/** Sends the browser to the outside issuer. */
export async function outsideAction(_before: Answer<never> | null, form: FormData): Promise<Answer<never>> {
  const answer = await byIssuer(null, form);
  if (!answer.ok) return answer;
  await setCookies(answer.value.cookies);
  redirect(answer.value.location);
}
