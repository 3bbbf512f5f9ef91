'use client';

import { Fragment, type ReactNode, useActionState, useState } from 'react';
import type { FormAction, FormAnswer } from '../form/answer';
import style from './people.module.css';

interface ActFormProps<T> {
  action: FormAction<T>;
  /** Fields nobody sees. */
  hidden: Record<string, string>;
  button: string;
  /** What is said once it is done. */
  done: (value: T) => ReactNode;
  children?: ReactNode;
}

/** A form that does one thing and says how it went, below it. Works without scripts. */
export function ActForm<T>({ action, hidden, button, done, children }: ActFormProps<T>) {
  // Handed on as it is and not wrapped, so that the form finds its way to the server before any script runs.
  const asked = action as (before: FormAnswer<T> | null, form: FormData) => Promise<FormAnswer<T>>;
  const [answer, run, isBusy] = useActionState<FormAnswer<T> | null, FormData>(asked, null);
  const [told, setTold] = useState(answer);
  const [round, setRound] = useState(0);
  if (answer !== told) {
    setTold(answer);
    if (answer?.ok) setRound(round + 1);
  }
  return (
    // An action that has ended empties the form, also one that was refused; what was done begins its fields anew instead.
    <form action={run} onReset={(event) => event.preventDefault()} className={style.form}>
      {Object.entries(hidden).map(([name, value]) => (
        <input key={name} type="hidden" name={name} value={value} />
      ))}
      <Fragment key={round}>{children}</Fragment>
      <button type="submit" disabled={isBusy}>
        {button}
      </button>
      <div role="status">
        {answer?.ok ? done(answer.value) : null}
        {answer && !answer.ok ? <Refused said={answer.said} faults={answer.faults} /> : null}
      </div>
    </form>
  );
}

function Refused({ said, faults }: { said: string; faults: string[] }) {
  return (
    <>
      <p>{said}</p>
      {faults.length > 0 ? (
        <ul>
          {faults.map((fault) => (
            <li key={fault}>{fault}</li>
          ))}
        </ul>
      ) : null}
    </>
  );
}
