'use client';

import { type PublicKeyCredentialCreationOptionsJSON, startRegistration } from '@simplewebauthn/browser';
import type { PersonAction } from '../sign-in/answers';
import { Field } from '../sign-in/field';
import { PersonForm } from '../sign-in/person-form';

/** Server action that asks for a new passkey. */
export type OfferPasskey = PersonAction<PublicKeyCredentialCreationOptionsJSON>;

/**
 * Adds a passkey of this device, or of a key that is put in.
 * @param offer asks for one
 * @param add is given it
 */
export function AddPasskey({ offer, add }: { offer: OfferPasskey; add: PersonAction<unknown> }) {
  const make: PersonAction<unknown> = async (_before, form) => {
    const asked = await offer(null, new FormData());
    if (!asked.ok) return asked;
    try {
      form.set('answer', JSON.stringify(await startRegistration({ optionsJSON: asked.value })));
    } catch {
      return { ok: false, said: 'No passkey was made.', reason: { why: 'not-made' } };
    }
    return await add(null, form);
  };
  return (
    <PersonForm send={make} button="Add a passkey" look="second" done="The passkey is added.">
      <Field
        label="Name of the new passkey"
        name="name"
        required
        maxLength={80}
        note="Such as “phone” or “blue key”."
      />
    </PersonForm>
  );
}
