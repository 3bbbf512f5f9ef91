'use client';

import { useActionState, useState } from 'react';
import { answerOf, type FormAction, type FormAnswer } from '../form/answer';
import { NotDone } from './not-done';
import { blankOf, type PlaceView, type RoundView } from './round-view';
import style from './rounds.module.css';

interface RestFormProps {
  page: RoundView;
  place: PlaceView;
  rest: FormAction<unknown>;
}

/** Enters every line of a place that is still blank: looked at and as usual, or not done. */
export function RestForm({ page: { site, round }, place, rest }: RestFormProps) {
  const [isNotDone, setNotDone] = useState(false);
  const [answer, run, isBusy] = useActionState<FormAnswer<unknown> | null, FormData>(
    async (_before, form) => await answerOf(rest, form),
    null,
  );
  const looked = blankOf(place).filter(({ check }) => check.kind === 'yes-no' || check.kind === 'head-count').length;
  return (
    <form
      action={run}
      onReset={(event) => event.preventDefault()}
      className={`${style.form} ${style.rest}`}
      aria-label="The rest of this place"
    >
      <input type="hidden" name="site" value={site.key} />
      <input type="hidden" name="round" value={round.id} />
      <input type="hidden" name="place" value={place.number} />
      {isNotDone ? (
        <NotDone title="The rest here was not done, because" isBusy={isBusy} back={() => setNotDone(false)} />
      ) : (
        <div className={style.buttons}>
          {looked > 0 ? (
            <button type="submit" disabled={isBusy}>
              I looked: the rest here is as usual ({looked})
            </button>
          ) : null}
          <button type="button" className={style.plain} onClick={() => setNotDone(true)}>
            The rest here was not done, because…
          </button>
        </div>
      )}
      <p role="status" className={style.status}>
        {isBusy ? 'Saving…' : null}
        {answer && !answer.ok ? `Not saved. ${answer.said}` : null}
      </p>
    </form>
  );
}
