'use client';

import { type PublicKeyCredentialCreationOptionsJSON, startRegistration } from '@simplewebauthn/browser';
import { type FormAction, givenUp } from '../form/answer';
import { Field } from '../sign-in/field';
import { PersonForm } from '../sign-in/person-form';

/** Server action that asks for a new passkey. */
export type OfferPasskey = FormAction<PublicKeyCredentialCreationOptionsJSON>;

/**
 * Adds a passkey of this device, or of a key that is put in.
 * @param offer asks for one
 * @param add is given it
 */
export function AddPasskey({ offer, add }: { offer: OfferPasskey; add: FormAction<unknown> }) {
  const make: FormAction<unknown> = async (_before, form) => {
    const asked = await offer(null, new FormData());
    if (!asked.ok) return asked;
    try {
      form.set('answer', JSON.stringify(await startRegistration({ optionsJSON: asked.value })));
    } catch {
      return givenUp('not-made', 'No passkey was made.');
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
