'use client';

import { useId } from 'react';
import { useBegin } from './begin-form';
import type { RoundsView } from './round-view';
import type { BeginAction } from './rounds-body';
import style from './rounds.module.css';

/** Walks a round besides the timetable, on the sheet of one that is in it. */
export function BesidesForm({ page: { site, slots, nextRound }, besides }: { page: RoundsView; besides: BeginAction }) {
  const { answer, run, isBusy } = useBegin(besides);
  const id = useId();
  return (
    <form action={run} className={style.form}>
      <input type="hidden" name="site" value={site.key} />
      <input type="hidden" name="entry" value={nextRound} />
      <label htmlFor={id}>
        Sheet of
        <select id={id} name="slot">
          {slots.map(({ key, name }) => (
            <option key={key} value={key}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <button type="submit" disabled={isBusy}>
        Walk it now
      </button>
      <div role="status">{answer && !answer.ok ? <p>{answer.said}</p> : null}</div>
    </form>
  );
}
