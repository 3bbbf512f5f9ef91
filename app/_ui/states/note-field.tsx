'use client';

import { useId } from 'react';

/** A few words. @param needed whether nothing is done without them */
export function NoteField({ title, needed }: { title: string; needed: boolean }) {
  const id = useId();
  return (
    <label htmlFor={id}>
      {title}
      {needed ? '' : ' (if there is anything to say)'}
      <textarea id={id} name="note" rows={2} maxLength={2000} required={needed} />
    </label>
  );
}
