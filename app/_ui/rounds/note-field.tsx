'use client';

import { useId } from 'react';

/** A few lines of text that may stay empty, unless `isNeeded`. */
export function NoteField({
  name,
  title,
  start,
  isNeeded = false,
}: {
  name: string;
  title: string;
  start?: string | undefined;
  isNeeded?: boolean;
}) {
  const id = useId();
  return (
    <label htmlFor={id}>
      {title}
      <textarea id={id} name={name} rows={2} maxLength={2000} defaultValue={start} required={isNeeded} />
    </label>
  );
}
