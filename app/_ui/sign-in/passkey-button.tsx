'use client';

import { type PublicKeyCredentialRequestOptionsJSON, startAuthentication } from '@simplewebauthn/browser';
import { type FormAction, givenUp } from '../form/answer';
import { PersonForm } from './person-form';

/** Server action that asks for a passkey. */
export type AskPasskey = FormAction<PublicKeyCredentialRequestOptionsJSON>;

/**
 * Signs in by a passkey of this device or of a key.
 * @param ask asks for one
 * @param send is given its answer
 * @param to where to go on to
 */
export function PasskeyButton({ ask, send, to }: { ask: AskPasskey; send: FormAction<never>; to: string | undefined }) {
  const signIn: FormAction<never> = async (_before, form) => {
    const asked = await ask(null, new FormData());
    if (!asked.ok) return asked;
    try {
      form.set('answer', JSON.stringify(await startAuthentication({ optionsJSON: asked.value })));
    } catch {
      return givenUp('not-used', 'No passkey was used.');
    }
    return await send(null, form);
  };
  return (
    <PersonForm send={signIn} hidden={to === undefined ? {} : { to }} button="Sign in with a passkey" look="second" />
  );
}
