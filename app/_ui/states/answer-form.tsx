'use client';

import { useId } from 'react';
import type { FormAction } from '../form/answer';
import { KeptForm } from '../safeguards/kept-form';
import style from './states.module.css';

interface Props {
  site: string;
  one: { asked: string; entry: string; system: { key: string } };
  answer: FormAction<unknown>;
}

/** Whether a state that looks as if it had begun has. */
export function AnswerForm({ site, one: { asked, entry, system }, answer }: Props) {
  const id = useId();
  return (
    <KeptForm
      action={answer}
      hidden={{ site, system: system.key, asked }}
      ids={{ entry }}
      labels={{ so: 'Whether it is so' }}
      button="Answer"
      done="It is answered."
    >
      <fieldset className={style.answers}>
        <legend>Is it so?</legend>
        <label htmlFor={`${id}y`} className={style.seen}>
          <input id={`${id}y`} type="radio" name="so" value="yes" required />
          yes, it has begun
        </label>
        <label htmlFor={`${id}n`} className={style.seen}>
          <input id={`${id}n`} type="radio" name="so" value="no" required />
          no: then something else stopped it, look
        </label>
      </fieldset>
    </KeptForm>
  );
}
