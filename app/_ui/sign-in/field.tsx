'use client';

import { type ComponentProps, type ReactNode, useId } from 'react';
import { useSent } from './person-form';
import style from './sign-in.module.css';

/**
 * A field with its label, a line that helps, and what is wrong with it.
 * @param note a line that helps
 */
export function Field({
  label,
  note,
  name,
  ...input
}: { label: string; note?: ReactNode; name: string } & ComponentProps<'input'>) {
  const id = useId();
  const { faults, typed } = useSent(name);
  const said = [note ? `${id}-note` : '', faults.length > 0 ? `${id}-fault` : ''].filter(Boolean).join(' ');
  return (
    <div className={style.field}>
      <label htmlFor={id}>{label}</label>
      <input
        {...input}
        defaultValue={input.type === 'password' ? undefined : (typed ?? input.defaultValue)}
        id={id}
        name={name}
        aria-describedby={said === '' ? undefined : said}
        aria-invalid={faults.length > 0 ? true : undefined}
      />
      {note ? (
        <p id={`${id}-note`} className={style.note}>
          {note}
        </p>
      ) : null}
      {faults.length > 0 ? (
        <p id={`${id}-fault`} className={style.fault}>
          {faults.join(' ')}
        </p>
      ) : null}
    </div>
  );
}
