'use client';

import { useId } from 'react';
import type { FormAction } from '../form/answer';
import { KeptForm } from '../safeguards/kept-form';
import { NoteField } from './note-field';
import style from './states.module.css';

/** The second signature: whether it is as it should be, and what was seen. */
export function SecondForm({ site, asked, sign }: { site: string; asked: string; sign: FormAction<unknown> }) {
  const id = useId();
  return (
    <KeptForm
      action={sign}
      hidden={{ site, asked }}
      labels={{ right: 'Whether it is right', note: 'What you saw' }}
      button="Sign"
      done="It is signed."
    >
      <fieldset className={style.answers}>
        <legend>I looked myself, and</legend>
        <label htmlFor={`${id}y`} className={style.seen}>
          <input id={`${id}y`} type="radio" name="right" value="yes" required />
          it is as it should be
        </label>
        <label htmlFor={`${id}n`} className={style.seen}>
          <input id={`${id}n`} type="radio" name="right" value="no" required />
          it is not
        </label>
      </fieldset>
      <NoteField title="What you saw" needed />
    </KeptForm>
  );
}
