'use client';

import { useActionState, useId } from 'react';
import type { FormAction, FormAnswer } from '../form/answer';
import type { AlarmView } from './alarm-view';
import style from './alarms.module.css';

interface NoteFormProps {
  site: string;
  alarm: AlarmView;
  note: FormAction<unknown>;
}

/** Adds a note to an alarm. What was typed stays when it is refused, and goes once it is kept. */
export function NoteForm({ site, alarm, note }: NoteFormProps) {
  const asked = note as (before: FormAnswer<unknown> | null, form: FormData) => Promise<FormAnswer<unknown>>;
  const [answer, run, isBusy] = useActionState<FormAnswer<unknown> | null, FormData>(asked, null);
  const id = useId();
  return (
    <form action={run} onReset={(event) => answer?.ok !== true && event.preventDefault()} className={style.form}>
      <input type="hidden" name="site" value={site} />
      <input type="hidden" name="occurrence" value={alarm.id} />
      <label htmlFor={id}>
        Note
        <input id={id} type="text" name="note" maxLength={2000} autoComplete="off" required />
      </label>
      <button type="submit" disabled={isBusy}>
        Add a note
      </button>
      <div role="status">
        {answer === null ? null : answer.ok ? (
          <p>The note is kept.</p>
        ) : (
          <p>
            <strong>{answer.said}</strong> {answer.faults.join(' ')}
          </p>
        )}
      </div>
    </form>
  );
}
