'use client';

import { useSyncExternalStore } from 'react';
import { type FormAction, givenUp } from '../form/answer';
import { Field } from '../sign-in/field';
import { PersonForm } from '../sign-in/person-form';

/** What this browser can do; null before it was asked. */
type Can = 'yes' | 'not-secure' | 'no' | null;

/**
 * Has this browser take calls.
 * @param publicKey by which its push service knows this Holdfast, base64url
 * @param add is told where the browser takes messages
 */
export function AddDevice({ publicKey, add }: { publicKey: string; add: FormAction<unknown> }) {
  const can = useSyncExternalStore<Can>(never, ability, () => null);
  if (can === 'not-secure')
    return <p>Open Holdfast by https, or on the machine it runs on: elsewhere a browser takes no messages.</p>;
  if (can === 'no')
    return (
      <p>
        This browser takes no messages. On a telephone, add Holdfast to the home screen first and open it from there.
      </p>
    );
  const subscribe: FormAction<unknown> = async (_before, form) => {
    try {
      const place = await subscribed(publicKey);
      for (const [name, value] of Object.entries(place)) form.set(name, value);
    } catch {
      return givenUp('not-made', 'The browser did not agree to take messages. Its settings say why.');
    }
    return await add(null, form);
  };
  return (
    <PersonForm send={subscribe} button="Have this browser take calls" look="second" done="This browser takes calls.">
      <Field
        label="Name of this browser"
        name="name"
        required
        maxLength={80}
        note="Such as “phone” or “plant room”. A test call shows whether it works."
      />
    </PersonForm>
  );
}

async function subscribed(publicKey: string): Promise<{ endpoint: string; p256dh: string; auth: string }> {
  if ((await Notification.requestPermission()) !== 'granted') throw new Error('not granted');
  const registration = await navigator.serviceWorker.register('/push-worker.js', { scope: '/' });
  await navigator.serviceWorker.ready;
  const subscription = await registration.pushManager.subscribe({
    userVisibleOnly: true,
    applicationServerKey: publicKey,
  });
  const { endpoint, keys = {} } = subscription.toJSON();
  if (!(endpoint && keys.p256dh && keys.auth)) throw new Error('not subscribed');
  return { endpoint, p256dh: keys.p256dh, auth: keys.auth };
}

/** It does not change while a page is open. */
function never(): () => void {
  return () => undefined;
}

function ability(): Can {
  if (!window.isSecureContext) return 'not-secure';
  return 'serviceWorker' in navigator && 'PushManager' in window && 'Notification' in window ? 'yes' : 'no';
}
