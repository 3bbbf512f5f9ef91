'use client';

import { createContext, type ReactNode, useActionState, useContext, useState } from 'react';
import type { FieldFault } from '#core/forms/field';
import type { FormAction, FormAnswer } from '../form/answer';
import style from './sign-in.module.css';

/** What a field has to know of its form. */
interface Sent {
  faults: readonly FieldFault[];
  /** What was sent and refused, so that it need not be typed again; passwords are. */
  typed: FormData | null;
}

type Acts<T> = (before: FormAnswer<T> | null, form: FormData) => Promise<FormAnswer<T>>;

const Sent = createContext<Sent>({ faults: [], typed: null });

/** What is wrong with a field of the form around it, and what was sent in it. */
export function useSent(name: string): { faults: string[]; typed: string | undefined } {
  const { faults, typed } = useContext(Sent);
  const text = typed?.get(name);
  return {
    faults: faults.filter(({ path }) => path === name).map(({ message }) => message),
    typed: typeof text === 'string' ? text : undefined,
  };
}

/**
 * A form about a person: its fields, its button, and what came of it. It works without scripts.
 * @param send server action
 * @param hidden what is sent along
 * @param look of the button: the first thing to do on the page, one beside it, or one of many in a table
 * @param done what is said once it is done, when the page stays
 */
export function PersonForm<T>({
  send,
  hidden = {},
  button,
  look = 'first',
  done,
  children,
}: {
  send: FormAction<T>;
  hidden?: Record<string, string>;
  button: string;
  look?: 'first' | 'second' | 'plain';
  done?: string;
  children?: ReactNode;
}) {
  const [typed, setTyped] = useState<FormData | null>(null);
  // Handed on as it is, so that a browser without scripts can send the form to it; none looks at what was answered before.
  const [answer, run, isBusy] = useActionState(send as Acts<T>, null);
  const refusal = answer?.ok === false ? answer : null;
  return (
    <Sent value={{ faults: refusal?.reason.faults ?? [], typed: refusal ? typed : null }}>
      <form action={run} className={style.form} onSubmit={(event) => setTyped(new FormData(event.currentTarget))}>
        {Object.entries(hidden).map(([name, value]) => (
          <input key={name} type="hidden" name={name} value={value} />
        ))}
        {children}
        <div className={style.buttons}>
          <button type="submit" className={style[look]} disabled={isBusy}>
            {button}
          </button>
        </div>
        <p role="status" className={refusal ? style.refused : style.done}>
          {refusal?.said ?? (answer?.ok ? done : '')}
        </p>
      </form>
    </Sent>
  );
}
