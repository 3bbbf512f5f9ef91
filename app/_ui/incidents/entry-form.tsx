'use client';

import { Fragment, type ReactNode, useActionState, useState } from 'react';
import type { FormAction, FormAnswer } from '../form/answer';
import form from '../safeguards/safeguards.module.css';
import { type HeadView, placeOf } from './incident-view';
import style from './incidents.module.css';

interface EntryFormProps {
  head: HeadView;
  /** Id for the entry, as the page was last told it. */
  id: string | undefined;
  action: FormAction<unknown>;
  /** Fields nobody sees. */
  hidden: Record<string, string>;
  /** What the fields are called, for what is said of a fault. */
  labels?: Readonly<Record<string, string>>;
  button: string;
  /** Said once it is done. */
  done: string;
  children?: ReactNode;
}

type Answer = FormAnswer<unknown> | null;

/**
 * A form that writes one entry of an incident. The page may be fetched anew beneath it at any time, since others write as
 * well: what is typed stays, and so does the id, until the entry is kept. Works without scripts.
 */
export function EntryForm({ head, id, action, hidden, labels = {}, button, done, children }: EntryFormProps) {
  // Handed on as it is and not wrapped, so that the form finds its way to the server before any script runs.
  const asked = action as (before: Answer, form: FormData) => Promise<FormAnswer<unknown>>;
  const [answer, run, isBusy] = useActionState<Answer, FormData>(asked, null);
  const [told, setTold] = useState<Answer>(null);
  const [held, setHeld] = useState(id);
  const [isSpent, setSpent] = useState(false);
  if (answer !== told) {
    setTold(answer);
    if (answer?.ok) setSpent(true);
  }
  if (isSpent && id !== held) {
    setHeld(id);
    setSpent(false);
  }
  return (
    // An action that has ended empties the form, also one that was refused; what was kept begins its fields anew instead.
    <form action={run} onReset={(event) => event.preventDefault()} className={`${form.form} ${style.form}`}>
      {Object.entries({ ...placeOf(head, held), ...hidden }).map(([name, value]) => (
        <input key={name} type="hidden" name={name} value={value} />
      ))}
      <Fragment key={held}>{children}</Fragment>
      <button type="submit" disabled={isBusy || isSpent}>
        {button}
      </button>
      <div role="status">
        {answer?.ok ? <p>{done}</p> : null}
        {answer && !answer.ok ? <Refused answer={answer} labels={labels} /> : null}
      </div>
    </form>
  );
}

/** Why something was not kept, with each fault by the name of its field. */
export function Refused({
  answer: { said, reason },
  labels,
}: {
  answer: Extract<FormAnswer<unknown>, { ok: false }>;
  labels: Readonly<Record<string, string>>;
}) {
  return (
    <>
      <p>
        <strong>{said}</strong>
      </p>
      <ul>
        {(reason.faults ?? []).map(({ path, message }) => (
          <li key={path}>
            {labels[path] ?? path}: {message}
          </li>
        ))}
      </ul>
    </>
  );
}
