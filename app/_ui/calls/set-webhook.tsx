'use client';

import { useState } from 'react';
import type { FormAction } from '../form/answer';
import { Field } from '../sign-in/field';
import { PersonForm } from '../sign-in/person-form';
import style from './calls.module.css';

/** Has calls posted to an address, and shows once what they are signed with. @param isOther whether there is one already */
export function SetWebhook({
  site,
  isOther,
  set,
}: {
  site: string;
  isOther: boolean;
  set: FormAction<{ secret: string }>;
}) {
  const [secret, setSecret] = useState<string | null>(null);
  const send: FormAction<{ secret: string }> = async (_before, form) => {
    const answer = await set(null, form);
    if (answer.ok) setSecret(answer.value.secret);
    return answer;
  };
  return (
    <>
      <PersonForm
        send={send}
        hidden={{ site }}
        button={isOther ? 'Post to another address' : 'Post calls there'}
        look="second"
      >
        <Field
          label="Address"
          name="url"
          type="url"
          required
          maxLength={2000}
          placeholder="https://"
          note="https, and reachable from the internet."
        />
      </PersonForm>
      {secret === null ? null : (
        <div role="status">
          <p>It is signed with this, which is shown now and never again:</p>
          <pre className={style.sample}>{secret}</pre>
        </div>
      )}
    </>
  );
}
