'use client';

import { createContext, type ReactNode, useActionState, useContext } from 'react';
import type { PersonAction, PersonAnswer, PersonFault } from './answers';
import style from './sign-in.module.css';

const Faults = createContext<readonly PersonFault[]>([]);

/** What is wrong with a field of the form around it. */
export function useFaults(name: string): string[] {
  return useContext(Faults)
    .filter(({ path }) => path === name)
    .map(({ message }) => message);
}

/**
 * A form about a person: its fields, its button, and what came of it. It works without scripts.
 * @param send server action
 * @param hidden what is sent along
 * @param done what is said once it is done, when the page stays
 */
export function PersonForm<T>({
  send,
  hidden = {},
  button,
  done,
  children,
}: {
  send: PersonAction<T>;
  hidden?: Record<string, string>;
  button: string;
  done?: string;
  children?: ReactNode;
}) {
  const [answer, run, isBusy] = useActionState(
    (_before: PersonAnswer<T> | null, form: FormData): Promise<PersonAnswer<T> | null> => send(null, form),
    null,
  );
  const refusal = answer?.ok === false ? answer : null;
  return (
    <Faults value={refusal?.reason.faults ?? []}>
      <form action={run} className={style.form}>
        {Object.entries(hidden).map(([name, value]) => (
          <input key={name} type="hidden" name={name} value={value} />
        ))}
        {children}
        <div className={style.buttons}>
          <button type="submit" className={style.first} disabled={isBusy}>
            {button}
          </button>
        </div>
        <p role="status" className={refusal ? style.refused : style.done}>
          {refusal?.said ?? (answer?.ok ? done : '')}
        </p>
      </form>
    </Faults>
  );
}
