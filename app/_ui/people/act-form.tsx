'use client';

import { Fragment, type ReactNode, useActionState, useState } from 'react';
import style from './people.module.css';

/** What doing something answers. */
export type ActAnswer<T> = { ok: true; value: T } | { ok: false; said: string; faults: string[] };
/** Does it, with the fields of a form. What it answered before makes no difference to it, so it is shown nothing of it. */
export type FormAction<T> = (before: never, form: FormData) => Promise<ActAnswer<T>>;

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
  const asked = action as (before: ActAnswer<T> | null, form: FormData) => Promise<ActAnswer<T>>;
  const [answer, run, isBusy] = useActionState<ActAnswer<T> | null, FormData>(asked, null);
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
