'use client';

import { createContext, type ReactNode, useActionState, useContext } from 'react';
import type { PersonAction, PersonAnswer, PersonFault } from './answers';
import style from './sign-in.module.css';

/** What a field has to know of its form. */
interface Sent {
  faults: readonly PersonFault[];
  /** What was sent and refused, so that it need not be typed again; passwords are. */
  typed: FormData | null;
}

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
 * @param isSecond whether it is beside the first thing to do on the page
 * @param done what is said once it is done, when the page stays
 */
export function PersonForm<T>({
  send,
  hidden = {},
  button,
  isSecond = false,
  done,
  children,
}: {
  send: PersonAction<T>;
  hidden?: Record<string, string>;
  button: string;
  isSecond?: boolean;
  done?: string;
  children?: ReactNode;
}) {
  const [sent, run, isBusy] = useActionState(
    async (_before: { answer: PersonAnswer<T>; form: FormData } | null, form: FormData) => ({
      answer: await send(null, form),
      form,
    }),
    null,
  );
  const answer = sent?.answer;
  const refusal = answer?.ok === false ? answer : null;
  return (
    <Sent value={{ faults: refusal?.reason.faults ?? [], typed: refusal ? (sent?.form ?? null) : null }}>
      <form action={run} className={style.form}>
        {Object.entries(hidden).map(([name, value]) => (
          <input key={name} type="hidden" name={name} value={value} />
        ))}
        {children}
        <div className={style.buttons}>
          <button type="submit" className={isSecond ? style.second : style.first} disabled={isBusy}>
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
