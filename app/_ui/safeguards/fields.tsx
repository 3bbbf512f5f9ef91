'use client';

import { useId } from 'react';

interface FieldProps {
  name: string;
  title: string;
  start?: string;
}

/** A day. @param first earliest, @param last latest, both ISO dates */
export function DayField({ name, title, start, first, last }: FieldProps & { first?: string; last?: string }) {
  const id = useId();
  return (
    <label htmlFor={id}>
      {title}
      <input id={id} type="date" name={name} defaultValue={start} min={first} max={last} required />
    </label>
  );
}

/** A line of text. */
export function LineField({ name, title, start }: FieldProps) {
  const id = useId();
  return (
    <label htmlFor={id}>
      {title}
      <input id={id} type="text" name={name} defaultValue={start} maxLength={200} required />
    </label>
  );
}

/** A few lines of text. */
export function TextField({ name, title, start, rows = 3 }: FieldProps & { rows?: number }) {
  const id = useId();
  return (
    <label htmlFor={id}>
      {title}
      <textarea id={id} name={name} defaultValue={start} rows={rows} maxLength={2000} required />
    </label>
  );
}
