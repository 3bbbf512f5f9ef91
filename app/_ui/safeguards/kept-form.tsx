'use client';

import { Fragment, type ReactNode, useActionState } from 'react';
import type { FormAction, FormAnswer } from '../form/answer';
import { type Ids, nameOf } from '#core/forms/held';
import { useHeldIds } from '../form/held-ids';
import style from './safeguards.module.css';

interface KeptFormProps {
  action: FormAction<unknown>;
  /** Fields nobody sees. */
  hidden: Record<string, string>;
  /** Ids that it is carried out under once, which each drawing of the page has anew: it keeps those it began with until it is done. */
  ids?: Ids;
  /** What the fields are called, for what is said of a fault. */
  labels?: Record<string, string>;
  button: string;
  /** Said once it is done. */
  done: string;
  children?: ReactNode;
}

const NONE: Ids = {};

/**
 * A form whose fields keep what was typed when it is refused and when the page brings itself up to date, and which says below how
 * it went. Works without scripts.
 */
export function KeptForm({ action, hidden, ids = NONE, labels = {}, button, done, children }: KeptFormProps) {
  // Handed on as it is and not wrapped, so that the form finds its way to the server before any script runs.
  const asked = action as (before: FormAnswer<unknown> | null, form: FormData) => Promise<FormAnswer<unknown>>;
  const [answer, run, isBusy] = useActionState<FormAnswer<unknown> | null, FormData>(asked, null);
  const held = useHeldIds(ids, answer);
  return (
    // An action that has ended empties the form, also one that was refused; once it is done its fields have another key instead.
    <form action={run} onReset={(event) => event.preventDefault()} className={style.form}>
      {Object.entries({ ...hidden, ...held }).map(([name, value]) => (
        <input key={name} type="hidden" name={name} value={value} />
      ))}
      <Fragment key={nameOf(held)}>{children}</Fragment>
      <button type="submit" disabled={isBusy}>
        {button}
      </button>
      <div role="status">
        {answer?.ok ? <p>{done}</p> : null}
        {answer && !answer.ok ? <Refused answer={answer} labels={labels} /> : null}
      </div>
    </form>
  );
}

function Refused({
  answer: { said, reason },
  labels,
}: {
  answer: Extract<FormAnswer<unknown>, { ok: false }>;
  labels: Record<string, string>;
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
